package dev.stayfixed.obd;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What the test of one code did in this driving cycle, in words: "P0420: test passed in this drive". It states bits 1 and 6 of that
 * code's status byte (ISO 14229-1 Annex D) and nothing else; the words must say that they speak of this cycle.
 */
final class WordStatus {

    static final int STATED_BITS = 0x42;

    private static final Map<String, Integer> RESULTS = Map.ofEntries(
            Map.entry("passed", 0x00),
            Map.entry("pass", 0x00),
            Map.entry("bestanden", 0x00),
            Map.entry("superada", 0x00),
            Map.entry("failed", 0x02),
            Map.entry("fail", 0x02),
            Map.entry("nicht bestanden", 0x02),
            Map.entry("no superada", 0x02),
            Map.entry("not run", 0x40),
            Map.entry("did not run", 0x40),
            Map.entry("not completed", 0x40),
            Map.entry("not complete", 0x40),
            Map.entry("nicht gelaufen", 0x40),
            Map.entry("no realizada", 0x40));

    private static final Set<String> TEST = Set.of("test", "the test", "monitor", "prueba");

    private WordStatus() {}

    static Optional<LineContent> read(Phrase phrase) {
        List<String> words = phrase.words();
        if (!CodeWords.isCode(words.get(0)) || phrase.colon() > 1 || words.size() < 3) {
            return Optional.empty();
        }
        for (int cut = 2; cut < words.size(); cut++) {
            Integer value = RESULTS.get(withoutTest(String.join(" ", words.subList(1, cut))));
            if (value != null && WordMonitor.isThisCycle(phrase.after(cut))) {
                StatusByte status = new StatusByte(value, STATED_BITS);
                return Optional.of(new LineContent.StatusWords(new Answer.CodeStatuses(
                        OptionalInt.empty(), STATED_BITS, Map.of(TroubleCode.parse(words.get(0)), status))));
            }
        }
        return Optional.empty();
    }

    private static String withoutTest(String text) {
        return TEST.stream()
                .filter(test -> text.startsWith(test + " "))
                .findFirst()
                .map(test -> text.substring(test.length() + 1))
                .orElse(text);
    }
}
