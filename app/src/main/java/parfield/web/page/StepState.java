package parfield.web.page;

/**
 * How far a step of a bench is.
 *
 * @param step which
 * @param done whether nothing is missing
 * @param note what is there or missing, in a few words
 */
public record StepState(Step step, boolean done, String note) {}
