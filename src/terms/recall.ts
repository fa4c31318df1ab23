/**
 * Does a piece of work, or gives what it came to before: the same work on the same input has the same result.
 *
 * @param name   of the work, one for each kind
 * @param input  everything that the work depends on, plain data
 * @param work   gives the result from the input and nothing else
 */
export type Recall = <Input, Output>(name: string, input: Input, work: (input: Input) => Output) => Output;

/** Remembers nothing: all work is done. */
export const afresh: Recall = (_name, input, work) => work(input);
