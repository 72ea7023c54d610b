/** Every module of the chunks, those that were joined into one told apart. */
export const chunkModules = (compilation, chunks) =>
  [...chunks]
    .flatMap((chunk) => [...compilation.chunkGraph.getChunkModulesIterable(chunk)])
    .flatMap((module) => module.modules ?? [module]);
