package dev.stayfixed.web.pages;

import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.platform.storage.StoredAnswers;
import java.util.Optional;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;

/** Takes a filled-in form once, however often it is sent: sent again, it leads to where it led the first time. */
@Component
public class SentOnce {

    private final Durably durably;
    private final StoredAnswers answers;

    SentOnce(Durably durably, StoredAnswers answers) {
        this.durably = durably;
        this.answers = answers;
    }

    /**
     * Does the work and remembers where it led, both or neither.
     *
     * @param work returns the address to go to; what it throws leaves no trace
     */
    public String lead(Form form, Supplier<String> work) {
        String name = form.value(FormToken.ONCE);
        if (!name.matches("[0-9a-f]{32}")) {
            return durably.write(work);
        }
        String key = "form:" + name;
        Optional<String> earlier = led(key);
        if (earlier.isPresent()) {
            return earlier.get();
        }
        return durably.write(() -> {
            durably.hold(key);
            return led(key).orElseGet(() -> firstTime(key, work));
        });
    }

    private String firstTime(String key, Supplier<String> work) {
        answers.claim(key, key);
        String to = work.get();
        answers.keep(key, new StoredAnswers.Answer(303, null, to, null, ""));
        return to;
    }

    private Optional<String> led(String key) {
        return durably.read(
                () -> answers.find(key)
                        .map(
                                stored -> stored.answer()
                                        .map(StoredAnswers.Answer::location)
                                        .orElseThrow(
                                                () -> new Refused(
                                                        ProblemType.ANSWER_LOST,
                                                        "this form was taken in before, and is not taken in twice; look at the list for what it made"))));
    }
}
