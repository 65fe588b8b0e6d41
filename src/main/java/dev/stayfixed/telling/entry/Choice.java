package dev.stayfixed.telling.entry;

import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.telling.EventKind;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Kinds of events that were chosen from those that are possible. */
final class Choice {

    private Choice() {}

    /** A list as a set, of these kinds only; a form without a tick has no list. */
    static Set<EventKind> only(String path, @Nullable List<EventKind> wanted, Set<EventKind> possible) {
        List<EventKind> chosen = wanted == null ? List.of() : wanted;
        for (int i = 0; i < chosen.size(); i++) {
            if (!possible.contains(chosen.get(i))) {
                throw Refused.content(new Mistake(path + "[" + i + "]", chosen.get(i), "one of " + possible));
            }
        }
        return new TreeSet<>(chosen);
    }
}
