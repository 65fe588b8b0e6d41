package dev.stayfixed.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * An argued scenario: a car, a job, a repair and some drives, and the verdict that the standards allow, with the argument. One line of
 * a file is one scenario, as JSON: {@code id}, {@code class}, {@code title}, {@code vehicle} and {@code job} (bodies of their POST),
 * {@code steps} (what is sent, in order), {@code expect} (what must hold afterwards), {@code why}, {@code source}.
 */
record Scenario(JsonNode said) {

    /** The scenarios of a resource beside this class. */
    static List<Scenario> ofResource(String name) {
        try (var in = Objects.requireNonNull(Scenario.class.getResourceAsStream(name), name)) {
            return of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static List<Scenario> ofFile(Path file) {
        try {
            return of(Files.readString(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Scenario> of(String lines) {
        return lines.lines()
                .filter(line -> !line.isBlank())
                .map(line -> new Scenario(JsonMapper.shared().readTree(line)))
                .toList();
    }

    String id() {
        return said.at("/id").asString();
    }

    /** The kind of judgement that it tries. */
    String kind() {
        return said.at("/class").asString();
    }

    String why() {
        return said.at("/why").asString("");
    }

    String source() {
        return said.at("/source").asString("");
    }

    @Override
    public String toString() {
        return id() + ": " + said.at("/title").asString();
    }
}
