/**
 * Who may see and do what: people and what they are in a kitchen, tablets, and the one table of
 * what each may do. Refuses: to know a page; the table names routes as words.
 */
@NullMarked
package halfgram.people;

import org.jspecify.annotations.NullMarked;
