package dev.stayfixed.telling;

import dev.stayfixed.reason.Kind;
import java.util.List;

/** What an event is about. */
enum StoryWord implements Kind {
    CODE_ON("code", "vehicle"),
    OF_JOB("what", "reference");

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> parts;

    StoryWord(String... parts) {
        this.parts = List.of(parts);
    }

    @Override
    public List<String> parts() {
        return parts;
    }
}
