package dev.stayfixed.reports.api;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Fetches and presents files; what was fetched is kept under target/looked-at for a look. */
final class PdfClient {

    private final HttpClient http = HttpClient.newHttpClient();
    private final String service;

    PdfClient(int port) {
        service = "http://127.0.0.1:" + port;
    }

    byte[] fetch(String path, String name) throws IOException {
        HttpResponse<byte[]> answer = send(HttpRequest.newBuilder(URI.create(service + path)));
        assertThat(answer.statusCode()).as(path).isEqualTo(200);
        assertThat(answer.headers().firstValue("Content-Type")).hasValue("application/pdf");
        Files.write(Files.createDirectories(Path.of("target", "looked-at")).resolve(name), answer.body());
        return answer.body();
    }

    /** Presents a file for checking. */
    JsonNode check(byte[] pdf) throws IOException {
        String boundary = "part-of-the-check";
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        body.writeBytes(("--" + boundary + "\r\nContent-Disposition: form-data; name=\"file\"; filename=\"x.pdf\"\r\n"
                        + "Content-Type: application/pdf\r\n\r\n")
                .getBytes(StandardCharsets.US_ASCII));
        body.writeBytes(pdf);
        body.writeBytes(("\r\n--" + boundary + "--\r\n").getBytes(StandardCharsets.US_ASCII));
        HttpResponse<byte[]> answer = send(HttpRequest.newBuilder(URI.create(service + "/api/v1/reports/check"))
                .header("Content-Type", "multipart/form-data; boundary=" + boundary)
                .POST(HttpRequest.BodyPublishers.ofByteArray(body.toByteArray())));
        assertThat(answer.statusCode()).isEqualTo(200);
        return JsonMapper.shared().readTree(answer.body());
    }

    private HttpResponse<byte[]> send(HttpRequest.Builder request) throws IOException {
        try {
            return http.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
