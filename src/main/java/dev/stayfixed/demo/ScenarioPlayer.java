package dev.stayfixed.demo;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import org.springframework.core.io.ClassPathResource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Plays a scenario, request by request, against a running service. */
final class ScenarioPlayer {

    private static final String FOLDER = "sample-logs/";
    private static final String FILE = "file:";
    private static final String BOUNDARY = "part-of-a-step-of-the-demo";

    private final HttpClient http =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
    private final JsonMapper json = JsonMapper.shared();
    private final String service;
    private final Blanks blanks;

    /**
     * A player against one service.
     *
     * @param service such as http://127.0.0.1:8080
     */
    ScenarioPlayer(String service, Blanks blanks) {
        this.service = service;
        this.blanks = blanks;
    }

    /**
     * Plays it.
     *
     * @return how many requests were made
     * @throws IllegalStateException naming the request that was answered otherwise than the scenario expects
     */
    int play(String scenario) {
        List<Step> steps = List.of(json.readValue(read(scenario), Step[].class));
        for (int i = 0; i < steps.size(); i++) {
            play(i + 1, steps.get(i));
        }
        return steps.size();
    }

    private void play(int number, Step step) {
        HttpResponse<String> answer = send(step);
        if (!step.isExpected(answer.statusCode())) {
            throw new IllegalStateException("step %d, %s %s: found %d %s, expected %s"
                    .formatted(
                            number,
                            step.method(),
                            step.path(),
                            answer.statusCode(),
                            answer.body(),
                            step.expectStatus() == null ? "2xx" : step.expectStatus()));
        }
        JsonNode body = json.readTree(answer.body().isEmpty() ? "{}" : answer.body());
        if (step.saveAs() != null && body.has("id")) {
            blanks.keep(step.saveAs(), body.get("id").stringValue());
        }
    }

    private HttpResponse<String> send(Step step) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(service + blanks.fill(step.path())))
                .timeout(Duration.ofSeconds(60))
                .header("Content-Type", type(step))
                .method(step.method(), HttpRequest.BodyPublishers.ofString(content(step)));
        if (!step.method().equals("GET")) {
            request.header("If-Match", "*");
        }
        try {
            return http.send(request.build(), HttpResponse.BodyHandlers.ofString());
        } catch (IOException e) {
            throw new IllegalStateException("the service did not answer " + step.path(), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("stopped while playing the scenario", e);
        }
    }

    private static String type(Step step) {
        if (step.logFile() != null) {
            return "multipart/form-data; boundary=" + BOUNDARY;
        }
        return isJson(step) ? "application/json" : "text/plain; charset=utf-8";
    }

    private String content(Step step) {
        String body = blanks.fill(body(step));
        return step.logFile() == null
                ? body
                : part("name=\"drive\"", "application/json", body)
                        + part("name=\"file\"; filename=\"log.csv\"", "text/csv", read(step.logFile()))
                        + "--" + BOUNDARY + "--\r\n";
    }

    private static String part(String disposition, String type, String content) {
        return "--%s\r\nContent-Disposition: form-data; %s\r\nContent-Type: %s\r\n\r\n%s\r\n"
                .formatted(BOUNDARY, disposition, type, content);
    }

    private static boolean isJson(Step step) {
        return step.bodyText() == null
                && (step.bodyFile() == null || step.bodyFile().endsWith(".json"));
    }

    private String body(Step step) {
        if (step.bodyText() != null) {
            return step.bodyText();
        }
        if (step.bodyFile() != null) {
            return read(step.bodyFile());
        }
        return step.body() == null ? "" : json.writeValueAsString(withFiles(step.body()));
    }

    /** A text "file:…" anywhere in a body stands for the content of that file: pasted scans stay readable as files of their own. */
    private JsonNode withFiles(JsonNode node) {
        if (node.isString() && node.stringValue().startsWith(FILE)) {
            return json.getNodeFactory().stringNode(read(node.stringValue().substring(FILE.length())));
        }
        if (node instanceof ObjectNode object) {
            object.properties().forEach(property -> property.setValue(withFiles(property.getValue())));
        } else if (node instanceof ArrayNode array) {
            for (int i = 0; i < array.size(); i++) {
                array.set(i, withFiles(array.get(i)));
            }
        }
        return node;
    }

    static boolean exists(String scenario) {
        return new ClassPathResource(FOLDER + scenario).exists();
    }

    private static String read(String file) {
        try (InputStream in = new ClassPathResource(FOLDER + file).getInputStream()) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException("sample-logs: found no file " + file, e);
        }
    }
}
