package halfgram.book;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.InputStream;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The published schema says of every book what the reader says; the mutations are cases below. */
class SchemaTest {
  private static final Schema SCHEMA = schema();
  private static final BookReader READER = new BookReader(Reference.load());

  @Test
  void theDemoBookIsValidBySchemaAndReader() {
    assertThat(errors(DemoBook.fresh())).isEmpty();
    assertThat(READER.read(DemoBook.FILE).problems()).isEmpty();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("halfgram.book.SchemaCases#accepted")
  void schemaAndReaderAccept(String what, String place, String value) {
    DemoBook changed = DemoBook.fresh().set(place, value);
    assertThat(errors(changed)).as("schema, %s", what).isEmpty();
    assertThat(READER.read(changed.bytes()).problems()).as("reader, %s", what).isEmpty();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("halfgram.book.SchemaCases#refused")
  void schemaAndReaderRefuse(String what, String place, String value) {
    DemoBook changed = DemoBook.fresh().set(place, value);
    assertThat(errors(changed)).as("schema, %s", what).isNotEmpty();
    assertThat(READER.read(changed.bytes()).problems()).as("reader, %s", what).isNotEmpty();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("halfgram.book.SchemaCases#refusedByTheReaderAlone")
  void onlyTheReaderKnowsWhatStandsElsewhere(String what, String place, String value) {
    DemoBook changed = DemoBook.fresh().set(place, value);
    assertThat(errors(changed)).as("schema, %s", what).isEmpty();
    assertThat(READER.read(changed.bytes()).problems()).as("reader, %s", what).isNotEmpty();
  }

  private static List<Error> errors(DemoBook book) {
    return SCHEMA.validate(book.json());
  }

  private static Schema schema() {
    InputStream stream = SchemaTest.class.getResourceAsStream("halfgram-book-1.schema.json");
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(Objects.requireNonNull(stream));
  }
}
