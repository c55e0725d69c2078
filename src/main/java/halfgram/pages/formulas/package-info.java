/**
 * Formulas: list, one with its scaler, versions and what they change, the form for a new version.
 * Refuses: to change a version that is there, and any rule of the trade of its own.
 */
@NullMarked
package halfgram.pages.formulas;

import org.jspecify.annotations.NullMarked;
