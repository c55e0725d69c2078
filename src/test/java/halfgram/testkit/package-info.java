/**
 * What the tests share: the named cast, books from seeds, laws run over many seeds, and a sheet as
 * lines to compare. Refuses: to know any rule of the computation.
 */
@org.jspecify.annotations.NullMarked
package halfgram.testkit;
