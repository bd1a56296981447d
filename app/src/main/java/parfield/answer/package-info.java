/**
 * What is asked of a bench and what is answered: findings as text for people and as JSON for
 * programs. Command line, pages and report all say what stands here, so that their numbers agree.
 *
 * <p>Belongs here: the questions (fit, predict), wording, rounding, tables, the shape of the JSON,
 * why something is refused. Does not belong here: the console, pages, what is stored.
 */
package parfield.answer;
