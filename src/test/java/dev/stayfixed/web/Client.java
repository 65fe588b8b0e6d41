package dev.stayfixed.web;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;

/** A client of the service, over real HTTP. Headers are given as name, value, name, value. */
public final class Client {

    public static final String JSON = "application/json";
    public static final String TEXT = "text/plain; charset=utf-8";

    private final HttpClient http = HttpClient.newHttpClient();
    private final String service;

    public Client(int port) {
        this.service = "http://127.0.0.1:" + port;
    }

    public Answer get(String path, String... headers) {
        return send("GET", path, "", new byte[0], headers);
    }

    public Answer post(String path, String json, String... headers) {
        return send("POST", path, JSON, json.getBytes(StandardCharsets.UTF_8), headers);
    }

    public Answer put(String path, String json, String... headers) {
        return send("PUT", path, JSON, json.getBytes(StandardCharsets.UTF_8), headers);
    }

    public Answer postText(String path, String text, String... headers) {
        return send("POST", path, TEXT, text.getBytes(StandardCharsets.UTF_8), headers);
    }

    public Answer send(String method, String path, String contentType, byte[] body, String... headers) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(service + path))
                .timeout(Duration.ofSeconds(60))
                .method(method, HttpRequest.BodyPublishers.ofByteArray(body));
        if (!contentType.isEmpty()) {
            request.header("Content-Type", contentType);
        }
        if (headers.length > 0) {
            request.headers(headers);
        }
        try {
            HttpResponse<byte[]> answer = http.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
            return new Answer(answer.statusCode(), answer.headers(), new String(answer.body(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new IllegalStateException(method + " " + path + " was not answered", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
