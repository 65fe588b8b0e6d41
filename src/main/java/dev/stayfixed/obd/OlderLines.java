package dev.stayfixed.obd;

import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Service $09 before CAN: one infotype in several answers of seven bytes, the third of which counts the lines from 1; each brings
 * four bytes. Source: SAE J1979 and ISO 15031-5; seen in the unit tests of a public decoder library.
 */
final class OlderLines {

    private static final Set<Integer> INFOTYPES = Set.of(0x02, 0x04, 0x06, 0x08, 0x0A, 0x0B);
    private static final int LINE_BYTES = 7;

    private final Map<String, Open> open = new LinkedHashMap<>();
    private final List<Message> done = new ArrayList<>();

    private static final class Open {
        private final String unit;
        private final int infotype;
        private final TreeMap<Integer, List<Integer>> parts = new TreeMap<>();
        private final List<Integer> lines = new ArrayList<>();

        private Open(String unit, int infotype) {
            this.unit = unit;
            this.infotype = infotype;
        }

        private Message toMessage() {
            List<Integer> bytes = new ArrayList<>(List.of(0x49, infotype));
            int number = 1;
            while (parts.containsKey(number)) {
                bytes.addAll(parts.get(number++));
            }
            Optional<Reason> missing = parts.lastKey() >= number
                    ? Optional.of(Reason.of(LineNote.OLDER_LINE_MISSING, Part.count(number)))
                    : Optional.empty();
            return new Message(unit, bytes, Message.Layout.OLDER, true, missing, lines);
        }
    }

    static boolean isOne(LineContent.Whole answer) {
        List<Integer> bytes = answer.bytes();
        return answer.layout() != Message.Layout.CAN
                && bytes.size() == LINE_BYTES
                && bytes.get(0) == 0x49
                && INFOTYPES.contains(bytes.get(1))
                && bytes.get(2) != 0;
    }

    void add(int line, LineContent.Whole answer) {
        int infotype = answer.bytes().get(1);
        int number = answer.bytes().get(2);
        String key = answer.unit() + " " + infotype;
        Open current = open.computeIfAbsent(key, unused -> new Open(answer.unit(), infotype));
        if (current.parts.containsKey(number)) {
            done.add(current.toMessage());
            current = new Open(answer.unit(), infotype);
            open.put(key, current);
        }
        current.parts.put(number, answer.bytes().subList(3, LINE_BYTES));
        current.lines.add(line);
    }

    List<Message> finish() {
        open.values().forEach(last -> done.add(last.toMessage()));
        open.clear();
        return done;
    }
}
