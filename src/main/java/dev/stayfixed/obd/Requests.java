package dev.stayfixed.obd;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** The requests that the paste shows, by line: some answers do not repeat what was asked. */
final class Requests {

    private final TreeMap<Integer, List<Integer>> byLine = new TreeMap<>();

    void add(int line, List<Integer> bytes) {
        byLine.put(line, bytes);
    }

    /** The last request above this line that begins with these bytes, empty where there is none. */
    Optional<List<Integer>> lastBefore(int line, int service, int subFunction) {
        return byLine.headMap(line, false).descendingMap().values().stream()
                .filter(request -> request.size() > 1 && request.get(0) == service && request.get(1) == subFunction)
                .findFirst();
    }

    /** The last request above this line. */
    Optional<List<Integer>> last(int line) {
        Map.Entry<Integer, List<Integer>> last = byLine.lowerEntry(line);
        return last == null ? Optional.empty() : Optional.of(last.getValue());
    }

    /** The service of the last request above this line. */
    Optional<Integer> lastService(int line) {
        return last(line).map(request -> request.get(0));
    }
}
