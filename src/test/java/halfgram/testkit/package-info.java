/**
 * What the tests share: the named cast, books from seeds, laws run over many seeds, a sheet as
 * lines to compare, and a PostgreSQL, a browser and the packed jar for the tests that run on them.
 * Refuses: to know any rule of the computation.
 */
@org.jspecify.annotations.NullMarked
package halfgram.testkit;
