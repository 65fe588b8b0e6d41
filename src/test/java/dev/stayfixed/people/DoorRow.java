package dev.stayfixed.people;

import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;

/**
 * One endpoint and what it needs, as access.csv states it: NOTHING, KNOWN (to be known at all), READ, DRIVES, WORK or OWN.
 *
 * @param pattern with places in braces, which are filled with what nobody has
 */
record DoorRow(String verb, String pattern, String need) {

    private static final Map<String, Set<String>> OPEN_TO = Map.of(
            "a stranger", Set.of("NOTHING"),
            "an ended token", Set.of(),
            "a token for drives", Set.of("NOTHING", "KNOWN", "DRIVES"),
            "a reader", Set.of("NOTHING", "KNOWN", "READ"),
            "a technician", Set.of("NOTHING", "KNOWN", "READ", "DRIVES", "WORK"),
            "an owner", Set.of("NOTHING", "KNOWN", "READ", "DRIVES", "WORK", "OWN"));

    static List<DoorRow> all() {
        try {
            return Files.readAllLines(Path.of("src/test/resources/access.csv")).stream()
                    .filter(line -> !line.startsWith("#") && !line.isBlank())
                    .map(line -> line.split(","))
                    .map(cells -> new DoorRow(cells[0], cells[1], cells[2]))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    String address() {
        return verb + " " + pattern;
    }

    boolean isOpenTo(String who) {
        return Objects.requireNonNull(OPEN_TO.get(who)).contains(need);
    }

    /** Those at which everybody tries: nobody signs out while the rows are gone through. */
    static List<DoorRow> tried() {
        return all().stream().filter(row -> !row.pattern().equals("/sign-out")).toList();
    }

    /** What an access rule answers; a link that does not exist, or a form that is not ours, is something else. */
    boolean isRefusal(int status) {
        return status == 401 || status == 303 || status == 403;
    }

    private String path() {
        return pattern.replace("{fingerprint:[0-9A-Fa-f]+}", "0".repeat(64))
                .replace("{token:[A-Za-z0-9_-]{24}}", "x".repeat(24))
                .replace("{token}", "x".repeat(24))
                .replace("{code}", "P0420")
                .replace("{slug}", "not-found")
                .replaceAll("\\{[^}]+}", UUID.randomUUID().toString());
    }

    private boolean isPage() {
        return !pattern.startsWith("/api/");
    }

    int by(Visitor visitor) {
        Answer answer = verb.equals("GET")
                ? visitor.open(path())
                : isPage() ? visitor.submitAs(verb, path()) : visitor.json(verb, path(), "{}", "If-Match", "\"0\"");
        return isOwnForm(answer) ? 200 : answer.status();
    }

    /** A form of a stranger has no token of ours: that is told apart from a refusal by its words. */
    private static boolean isOwnForm(Answer answer) {
        return answer.status() == 403 && answer.body().contains("did not come from a page");
    }

    int by(int port, String token) {
        Client program = new Client(port);
        String[] headers = {"Authorization", "Bearer " + token, "If-Match", "\"0\""};
        Answer answer = verb.equals("GET")
                ? program.get(path(), headers)
                : isPage()
                        ? program.send(
                                verb,
                                path(),
                                "application/x-www-form-urlencoded",
                                "x=y".getBytes(StandardCharsets.UTF_8),
                                headers)
                        : program.send(
                                verb, path(), "application/json", "{}".getBytes(StandardCharsets.UTF_8), headers);
        return isOwnForm(answer) ? 200 : answer.status();
    }
}
