package halfgram.prep;

import halfgram.measure.Message;
import java.time.Duration;
import java.util.List;

/**
 * Something that does not fit by lags alone.
 *
 * @param path why path of the time missing
 * @param what the whole in one sentence
 * @param shortBy how much time is missing
 * @param safety whether a safety limit is broken; then there is no lever but making it again
 * @param chain from the first step to the service, each with its minutes
 */
public record Misfit(
    String path, Message what, Duration shortBy, boolean safety, List<Message> chain) {}
