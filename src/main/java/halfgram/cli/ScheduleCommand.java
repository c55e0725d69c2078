package halfgram.cli;

import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.prep.schedule.project.Project;
import halfgram.prep.schedule.project.ProjectSchedule;
import halfgram.prep.schedule.project.ProjectText;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/**
 * {@code schedule FILE}: a project of the scheduling benchmarks, scheduled by the planner's own
 * engine. With {@code --iterations} alone the answer depends on file and seed only; seconds are the
 * clock's.
 */
final class ScheduleCommand {
  private static final int MOST_BYTES = 10_000_000;
  private static final int MOST_SECONDS = 3600;
  private static final int MOST_ITERATIONS = 1_000_000_000;
  private static final double USUAL_SECONDS = 1;

  private final Cli cli;

  ScheduleCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments =
        new Arguments(args, Set.of("--seconds", "--iterations", "--seed"), Set.of("--json"));
    String file = arguments.word("FILE");
    Optional<ProjectText.Format> format = ProjectText.Format.ofName(file);
    if (format.isEmpty() && !file.isEmpty()) {
      arguments.problem("usage.bad", "FILE", file, Message.of("accept.project-file"));
    }
    Optional<Double> seconds =
        arguments.find("--seconds", ScheduleCommand::seconds, "accept.seconds", MOST_SECONDS);
    Optional<Integer> iterations = whole(arguments, "--iterations", 1, MOST_ITERATIONS);
    Optional<Integer> seed = whole(arguments, "--seed", 0, MOST_ITERATIONS);
    if (!arguments.problems().isEmpty() || format.isEmpty()) {
      return cli.usage(arguments.problems());
    }
    Optional<Project> project = read(file, format.get());
    if (project.isEmpty()) {
      return Exit.UNUSABLE;
    }
    BooleanSupplier goesOn = () -> true;
    if (seconds.isPresent() || iterations.isEmpty()) {
      long end =
          System.nanoTime() + (long) (seconds.orElse(USUAL_SECONDS) * TimeUnit.SECONDS.toNanos(1));
      goesOn = () -> System.nanoTime() < end;
    }
    ProjectSchedule.Outcome outcome =
        ProjectSchedule.of(
            project.get(),
            new ProjectSchedule.Budget(seed.orElse(1), iterations.orElse(MOST_ITERATIONS), goesOn));
    cli.out()
        .print(
            arguments.has("--json")
                ? new ScheduleJson(project.get(), file).text(outcome)
                : new ScheduleText(project.get(), cli.messages()).text(outcome));
    return outcome.fold(found -> Exit.DONE, impossible -> Exit.NO, open -> Exit.OPEN);
  }

  /** The project of a file; what is wrong with it is said, one a line. */
  private Optional<Project> read(String file, ProjectText.Format format) {
    byte[] bytes;
    try {
      bytes = cli.files().read(file);
    } catch (IOException e) {
      cli.error(file + ": " + DataFolder.reason(cli.messages(), e));
      return Optional.empty();
    }
    if (bytes.length > MOST_BYTES) {
      cli.error(file + ": " + cli.messages().say("project.too-large", bytes.length, MOST_BYTES));
      return Optional.empty();
    }
    ProjectText.Reading reading =
        ProjectText.read(format, new String(bytes, StandardCharsets.UTF_8));
    for (Problem problem : reading.problems()) {
      cli.error(Books.said(cli.messages(), file, problem));
    }
    return reading.project();
  }

  private static Optional<Integer> whole(Arguments arguments, String option, int least, int most) {
    return arguments.find(
        option,
        text ->
            text.matches("\\d{1,10}")
                    && Long.parseLong(text) >= least
                    && Long.parseLong(text) <= most
                ? Optional.of(Integer.valueOf(text))
                : Optional.empty(),
        "accept.range",
        least,
        most);
  }

  private static Optional<Double> seconds(String text) {
    if (!text.matches("\\d{1,4}(\\.\\d{1,6})?")) {
      return Optional.empty();
    }
    double seconds = Double.parseDouble(text);
    return seconds >= 0.01 && seconds <= MOST_SECONDS ? Optional.of(seconds) : Optional.empty();
  }
}
