package dev.stayfixed.histories;

import dev.stayfixed.histories.Answer.Codes;
import dev.stayfixed.histories.Answer.SinceClear;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** Writes the lists and the lamp of one unit as a tool shows them that has words only. */
final class WordsText {

    private WordsText() {}

    static String of(Reading reading) {
        List<String> lines = new ArrayList<>();
        for (Answer answer : reading.answers()) {
            if (answer instanceof Codes codes) {
                String list = switch (codes.listing()) {
                    case CONFIRMED -> "Stored codes: ";
                    case PENDING -> "Pending codes: ";
                    case PERMANENT -> "Permanent codes: ";
                };
                lines.add(list + (codes.codes().isEmpty() ? "none" : String.join(", ", new TreeSet<>(codes.codes()))));
            } else if (answer instanceof SinceClear since) {
                lines.add("MIL: " + (since.lamp() ? "ON" : "OFF"));
            }
        }
        return String.join("\n", lines) + "\n";
    }
}
