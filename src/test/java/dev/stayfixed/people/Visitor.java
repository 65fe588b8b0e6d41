package dev.stayfixed.people;

import dev.stayfixed.web.Answer;
import java.io.IOException;
import java.net.CookieManager;
import java.net.HttpCookie;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A browser somewhere else: it keeps cookies, sends forms of the pages it has seen, and comes by a proxy. */
final class Visitor {

    private static final Pattern TOKEN = Pattern.compile("name=\"formToken\" value=\"([0-9a-f]+)\"");

    private final CookieManager cookies = new CookieManager();
    private final HttpClient http =
            HttpClient.newBuilder().cookieHandler(cookies).build();
    private final String service;
    private final String address;
    private String formToken = "";

    Visitor(int port, String address) {
        this.service = "http://127.0.0.1:" + port;
        this.address = address;
    }

    Answer open(String path, String... headers) {
        Answer page = send(request(path, headers).GET());
        Matcher token = TOKEN.matcher(page.body());
        if (token.find()) {
            formToken = token.group(1);
        }
        return page;
    }

    /** @param fields name, value, name, value */
    Answer submit(String path, String... fields) {
        return submitAs("POST", path, fields);
    }

    Answer submitAs(String method, String path, String... fields) {
        List<String> parts = new ArrayList<>(List.of("formToken=" + formToken));
        for (int i = 0; i < fields.length; i += 2) {
            parts.add(fields[i] + "=" + URLEncoder.encode(fields[i + 1], StandardCharsets.UTF_8));
        }
        return send(request(path, "Content-Type", "application/x-www-form-urlencoded")
                .method(method, HttpRequest.BodyPublishers.ofString(String.join("&", parts))));
    }

    Answer json(String method, String path, String body, String... headers) {
        return send(request(path, headers)
                .setHeader("Content-Type", "application/json")
                .setHeader("Accept", "application/json")
                .method(method, HttpRequest.BodyPublishers.ofString(body)));
    }

    private HttpRequest.Builder request(String path, String... headers) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(service + path))
                .header("X-Forwarded-For", address)
                .header("Accept", "text/html");
        if (headers.length > 0) {
            request.headers(headers);
        }
        return request;
    }

    private Answer send(HttpRequest.Builder request) {
        try {
            HttpResponse<String> answer = http.send(request.build(), HttpResponse.BodyHandlers.ofString());
            return new Answer(answer.statusCode(), answer.headers(), answer.body());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    Optional<String> cookie(String name) {
        return cookies.getCookieStore().getCookies().stream()
                .filter(cookie -> cookie.getName().equals(name))
                .map(HttpCookie::getValue)
                .findFirst();
    }
}
