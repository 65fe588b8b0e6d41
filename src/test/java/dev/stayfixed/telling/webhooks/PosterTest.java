package dev.stayfixed.telling.webhooks;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.telling.Receiver;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class PosterTest {

    /** Elsewhere the tests give a receiver all the time it needs; here the wait is what is tested. */
    @Test
    void aReceiverThatNeverAnswersIsLeftWhenPatienceEnds() throws Exception {
        Poster poster = new Poster(new Targets(true), 300);
        try (Receiver receiver = new Receiver()) {
            receiver.answering(receiver.silent());
            assertThat(poster.post(receiver.url(), Map.of("webhook-id", "1"), "{}"))
                    .isEqualTo(new Poster.Unanswered("not within 300 ms"));
        } finally {
            poster.close();
        }
    }
}
