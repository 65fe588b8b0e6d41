package dev.stayfixed;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Whoever reads a name knows which one is meant: no two types of one name, no two rooms that differ by one letter. */
class NamesTest {

    private static final Path ROOT = Path.of("src/main/java/dev/stayfixed");

    @Test
    void noTwoTypesHaveOneName() throws IOException {
        try (Stream<Path> files = Files.walk(ROOT)) {
            assertThat(twice(files.map(file -> file.getFileName().toString())
                            .filter(name -> name.endsWith(".java") && !name.equals("package-info.java"))
                            .toList()))
                    .isEmpty();
        }
        assertThat(twice(List.of("Drive", "Job", "Drive"))).containsExactly("Drive");
    }

    @Test
    void noTwoRoomsDifferByOneLetter() throws IOException {
        try (Stream<Path> rooms = Files.list(ROOT).filter(Files::isDirectory)) {
            assertThat(alike(rooms.map(room -> room.getFileName().toString()).toList()))
                    .isEmpty();
        }
        assertThat(alike(List.of("drive", "driver", "jobs"))).containsExactly("drive, driver");
        assertThat(alike(List.of("drive", "drove", "jobs"))).containsExactly("drive, drove");
    }

    private static Set<String> twice(List<String> names) {
        Set<String> seen = new TreeSet<>();
        Set<String> twice = new TreeSet<>();
        names.stream().filter(name -> !seen.add(name)).forEach(twice::add);
        return twice;
    }

    private static List<String> alike(List<String> names) {
        List<String> sorted = names.stream().sorted().toList();
        return sorted.stream()
                .flatMap(one -> sorted.stream()
                        .filter(other -> one.compareTo(other) < 0 && isOneLetterApart(one, other))
                        .map(other -> one + ", " + other))
                .toList();
    }

    private static boolean isOneLetterApart(String one, String other) {
        int same = 0;
        int shorter = Math.min(one.length(), other.length());
        while (same < shorter && one.charAt(same) == other.charAt(same)) {
            same++;
        }
        int atEnd = 0;
        while (atEnd < shorter - same
                && one.charAt(one.length() - 1 - atEnd) == other.charAt(other.length() - 1 - atEnd)) {
            atEnd++;
        }
        return Math.max(one.length(), other.length()) - same - atEnd <= 1;
    }
}
