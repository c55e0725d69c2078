package halfgram.book.table;

import halfgram.measure.Message;

/**
 * Something wrong with a cell of a table.
 *
 * @param row as a spreadsheet counts; 1 is the header
 * @param column its name; empty for the whole row
 */
public record Misread(int row, String column, String value, Message message) {}
