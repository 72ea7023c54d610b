/** The worker that simulates a job. */
import { allSteps, answerWork } from "../workers/answerWork";
import { simulationSteps } from "./simulationSteps";

answerWork(allSteps(simulationSteps));
