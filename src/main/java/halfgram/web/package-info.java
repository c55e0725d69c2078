/**
 * Carries the pages: the server, templates, assets, forms, change signals, errors of the five
 * kinds. Refuses: to know any rule of the kitchen.
 */
@NullMarked
package halfgram.web;

import org.jspecify.annotations.NullMarked;
