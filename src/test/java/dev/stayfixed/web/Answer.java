package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpHeaders;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the service answered. */
public record Answer(int status, HttpHeaders headers, String body) {

    private static final JsonMapper JSON = JsonMapper.shared();
    private static final String UUID_FORM = "[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}";
    private static final Set<String> PROBLEMS_MET = ConcurrentHashMap.newKeySet();

    /** The slug of every type of problem that any test has met so far. */
    static Set<String> problemsMet() {
        return PROBLEMS_MET;
    }

    public JsonNode json() {
        return JSON.readTree(body);
    }

    /** A value by JSON pointer, as text; "" where there is none. */
    public String at(String pointer) {
        return json().at(pointer).asString("");
    }

    public String id() {
        return at("/id");
    }

    public String header(String name) {
        return headers.firstValue(name).orElse("");
    }

    public String etag() {
        return header("ETag");
    }

    public Answer is(int expected) {
        assertThat(status).as(body).isEqualTo(expected);
        return this;
    }

    /** A problem of this type, with everything that RFC 9457 and this service promise. */
    public Answer isProblem(int expected, String slug) {
        assertThat(status).as(body).isEqualTo(expected);
        assertThat(header("Content-Type")).as(body).startsWith("application/problem+json");
        assertThat(at("/type")).as(body).isEqualTo("/problems/" + slug);
        PROBLEMS_MET.add(slug);
        assertThat(json().at("/status").asInt()).isEqualTo(expected);
        assertThat(at("/title")).isNotBlank();
        assertThat(at("/detail")).isNotBlank();
        assertThat(at("/instance")).matches("urn:uuid:" + UUID_FORM).endsWith(header("X-Request-Id"));
        assertThat(header("X-Content-Type-Options")).isEqualTo("nosniff");
        return this;
    }
}
