package dev.stayfixed.obd;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/** Facts of the standards as data files: one row one check, with the clause or source that it comes from. */
final class Facts {

    static final Set<String> MARKS = Set.of("standard text", "secondary source", "computed", "from memory");

    /**
     * A row of a data file.
     *
     * @param input what is read; " / " separates lines
     * @param mark how sure the expectation is, one of {@link #MARKS}
     */
    record Row(String file, String id, String input, String expected, String clause, String mark) {
        String lines() {
            return input.replace(" / ", "\n");
        }

        @Override
        public String toString() {
            return file + " " + id + ": " + input + " -> " + expected;
        }
    }

    private Facts() {}

    static List<Row> read(String file) {
        InputStream stream = Facts.class.getResourceAsStream(file + ".csv");
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(Objects.requireNonNull(stream, file), StandardCharsets.UTF_8))) {
            return reader.lines().skip(1).map(line -> row(file, line)).toList();
        } catch (IOException failure) {
            throw new UncheckedIOException(failure);
        }
    }

    private static Row row(String file, String line) {
        String[] fields = line.split(",", -1);
        if (fields.length != 5) {
            throw new IllegalStateException(file + ".csv: five fields expected in " + line);
        }
        return new Row(file, fields[0], fields[1], fields[2], fields[3], fields[4]);
    }
}
