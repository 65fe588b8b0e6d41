package dev.stayfixed;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/** Reads a data file of check rows: fields parted by {@code |}, lines that begin with {@code #} are remarks. */
public final class ReferenceRows {

    private ReferenceRows() {}

    /** One check: id, kind, input, expected, clause and mark. */
    public record Row(List<String> fields) {
        public int id() {
            return Integer.parseInt(fields.get(0));
        }

        public String kind() {
            return fields.get(1);
        }

        public String input() {
            return fields.get(2);
        }

        public List<String> inputs() {
            return List.of(input().split("\\s+"));
        }

        public String expected() {
            return fields.get(3);
        }

        @Override
        public String toString() {
            return String.join(" | ", fields);
        }
    }

    public static List<Row> in(Class<?> owner, String file) {
        try (InputStream in = Objects.requireNonNull(owner.getResourceAsStream(file), file)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .map(line -> new Row(
                            Arrays.stream(line.split("\\|")).map(String::strip).toList()))
                    .peek(row -> {
                        if (row.fields().size() != 6) {
                            throw new IllegalStateException("not six fields: " + row);
                        }
                    })
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
