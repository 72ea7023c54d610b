/**
 * The demo's schedule: invented jobs with honest mistakes in it, of the kind that people make.
 *
 * One text a row, cells parted by `|`. `@` before a number is a date serial: what a spreadsheet makes
 * of a typed `7-0`.
 */
export const demoHeadings =
  "Job|Mark|Qty|Type|Width|Height|Post height|Tail post|Tail run|Transom|Floor|Lock|Hand|Note";

export const demoRows: readonly string[] = [
  // Tool crib: mostly clean.
  "Tool crib, Alder plant|A-101|1|sliding door|8'-0\"|7'-0\"|7'-0\"|yes|8'-6\"|no|concrete|padlock|right|",
  "Tool crib, Alder plant|A-102|2|sliding door|4'|7'|8'|yes|5'|no|concrete|padlock|left|",
  "Tool crib, Alder plant|A-103|1|sliding door|5'-0\"|7'-0\"|8'-0\"|yes|6'|yes|concrete|cylinder|right|exactly 5 ft",
  "Tool crib, Alder plant|A-104|1|sliding door|5'-0 1/2\"|7'-0\"|8'-0\"|yes|6'|no|concrete|cylinder|right|",
  "Tool crib, Alder plant|A-105|3|sliding door|72|84|96|y|7'-6\"|n|concrete|padlock|left|inches",
  "Tool crib, Alder plant|A-106|1|sliding door|7'-0\"|7'-0\"|9'-0\"|yes|8'|no|concrete|padlock|right|track between 6 and 8 ft",
  "Tool crib, Alder plant|A-107|1|sliding door|2438 mm|2134 mm|2134 mm|yes|2600 mm|no|concrete|padlock|right|metric drawing",
  "Tool crib, Alder plant|A-108|1|hinged door|3'-0\"|7'-0\"|8'-0\"|no||no|concrete|mortise|left|",
  "Tool crib, Alder plant|A-109|2|hinged door pair|6'-0\"|7'-0\"|8'-0\"|no||yes|concrete|mortise|both|",
  "Tool crib, Alder plant|A-110|2|service window|4'-0\"|3'-6\"|8'-0\"|no||no|concrete|padlock||issue counter",
  "Tool crib, Alder plant|A-111|1|sliding door|10'-0\"|8'-0\"|8'-0\"|yes|10'-6\"|no|concrete|padlock|left|",
  "Tool crib, Alder plant|A-112|1|sliding door|6'-0\"|7'-0\"|10'-0\"|no|4'|yes|concrete|padlock|right|short tail run",
  "Tool crib, Alder plant|A-113|1|sliding door|8'|@46209|8'|yes|9'|no|concrete|padlock|right|typed 7-6",
  "Tool crib, Alder plant|A-114|1|fixed transom|8'-0\"|2'-0\"|10'-0\"|||yes||||over A-111",
  // Stock room: a revision typed in a hurry.
  "Stock room, Birch depot|B-01|4|sliding door|4'-6\"|7'-0\"|7'-0\"|yes|5'-6\"|no|concrete|padlock|right|",
  "Stock room, Birch depot|B-02|4|Sliding|4'-6\"|7'-0\"|7'-0\"|yes|5'-6\"|no|concrete|padlock|left|",
  "Stock room, Birch depot|B-03|1|sliding door|12'-0\"|8'-0\"|9'-0\"|yes|12'-6\"|no|concrete|cylinder|right|",
  "Stock room, Birch depot|B-04|1|sliding door|9'-6\"|8'-0\"|7'-0\"|yes|10'|no|concrete|cylinder|right|post too short",
  "Stock room, Birch depot|B-05|2|bi-parting sliding door|12'-0\"|8'-0\"|10'-0\"|yes|7'|yes|concrete|cylinder||",
  "Stock room, Birch depot|B-06|1|sliding door|8'-0\"|7'-0\"||yes|9'|no|wood|padlock|left|post height to come",
  "Stock room, Birch depot|B-07|1|slidng door|4'-0\"|7'-0\"|8'-0\"|yes|5'|no|wood|padlock|left|",
  "Stock room, Birch depot|B-08|1|sliding door|4'-0\"|7'-0\"|8'-0\"|maybe|5'|no|wood|padlock|left|",
  "Stock room, Birch depot|B-08|1|sliding door|6'-6\"|7'-0\"|8'-0\"|yes|7'-6\"|no|wood|padlock|right|mark used twice",
  "Stock room, Birch depot|B-09|2 or 3|sliding door|5'-6\"|7'-0\"|8'-0\"|yes|6'|no|wood|padlock|right|",
  "Stock room, Birch depot|B-10|1|hinged door|3'-6\"|7'-0\"|8'-0\"|no||no|wood|panic|right|on a way out?",
  "Stock room, Birch depot|B-11|1|service window|5'-0\"|4'-0\"|8'-0\"|no||no|wood|padlock||",
  "Stock room, Birch depot|B-12|1|sliding door|2134|84|96|yes|9'|no|wood|padlock|right|mm in an inch column",
  "Stock room, Birch depot|Total|24|||||||||||",
  // Plant cage: large doors.
  "Plant cage, Cedar works|C-1|2|sliding door|14'-0\"|10'-0\"|10'-0\"|yes|14'-6\"|no|concrete|cylinder|right|",
  "Plant cage, Cedar works|C-2|1|sliding door|16'-0\"|10'-0\"|12'-0\"|yes|16'-6\"|yes|concrete|cylinder|left|widest of the book",
  "Plant cage, Cedar works|C-3|1|sliding door|17'-0\"|10'-0\"|12'-0\"|yes|18'|no|concrete|cylinder|left|too wide",
  "Plant cage, Cedar works|C-4|1|sliding door|8'-0\"|8'-0\"|12'-0\"|yes|9'|yes|concrete|padlock|right|",
  "Plant cage, Cedar works|C-5|1|sliding door|8'-0\"|9'-0\"|12'-0\"|yes|9'|yes|concrete|padlock|right|no plate for 9 ft",
  "Plant cage, Cedar works|C-6|6|sliding door|4'-0\"|8'-0\"|8'-0\"|yes|5'|no|concrete|padlock|left|",
  "Plant cage, Cedar works|C-7|6|sliding door|4'-0\"|8'-0\"|8'-0\"|yes|5'|no|asphalt|padlock|right|yard side",
  "Plant cage, Cedar works|C-8|1|bi-parting sliding door|16'-0\"|10'-0\"|12'-0\"|yes|9'|no|concrete|cylinder||",
  "Plant cage, Cedar works|C-9|2|hinged door pair|7'-0\"|8'-0\"|9'-0\"|no||no|concrete|mortise|both|",
  "Plant cage, Cedar works|C-10|1|sliding door|7 foot six|8'-0\"|9'-0\"|yes|9'|no|concrete|padlock|right|",
  "Plant cage, Cedar works|C-11|3|fixed transom|4'-0\"|1'-6\"|10'-0\"|||yes||||",
  "Plant cage, Cedar works|C-12|1|sliding door|6'-0\"|8'-0\"|9'-0\"|no|7'|no|concrete|padlock|right|no tail post",
  "Plant cage, Cedar works|C-13|2|sliding door|8'-0\"|8'-0\"|9'-0\"|yes|3'|yes|concrete|padlock|left|hang the track first",
];
