package dev.stayfixed.obd;

import dev.stayfixed.reason.Reason;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;

/**
 * What a whole message turned out to say.
 *
 * @param answers empty where the message is fine but carries nothing that is used
 * @param explanation made when somebody asks
 * @param whole false where codes may be missing from the list
 * @param possible codes that the same bytes name in the other layout that fits
 */
record Decoded(List<Answer> answers, Supplier<Reason> explanation, boolean whole, Set<TroubleCode> possible) {

    Decoded(List<Answer> answers, Supplier<Reason> explanation, boolean whole) {
        this(answers, explanation, whole, Set.of());
    }

    static Decoded of(Supplier<Reason> explanation, Answer... answers) {
        return new Decoded(List.of(answers), explanation, true);
    }

    static Decoded of(Reason explanation, Answer... answers) {
        return of(() -> explanation, answers);
    }

    /** The same, of a list from which codes may be missing. */
    Decoded incomplete() {
        return new Decoded(answers, explanation, false, possible);
    }
}
