/**
 * The running kitchen: the verbs that load, compute and save, asked by pages, API and command line
 * alike. Refuses: to know how it was asked.
 */
@NullMarked
package halfgram.desk;

import org.jspecify.annotations.NullMarked;
