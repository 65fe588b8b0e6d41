package dev.stayfixed.bench;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;

/**
 * What each list costs over HTTP, warm, in a shop with many jobs against one with 1,000; one of ten is open. {@code
 * -Dstayfixed.lists=1000000} for more than 100,000.
 */
final class ListCosts {

    private static final int FEW = 1_000;
    private static final int MANY = Integer.getInteger("stayfixed.lists", 100_000);

    /** Some searches find one job in either shop, some a share of all. */
    private static final List<String> LISTS = List.of(
            "/",
            "/?need=stalled",
            "/?page=4",
            "/?q=st+000990",
            "/?q=p0420",
            "/closed",
            "/closed?q=st+000500",
            "/closed?q=p0420",
            "/api/v1/jobs",
            "/api/v1/jobs?q=ona+000500",
            "/api/v1/vehicles?q=000500",
            "/learning",
            "/learning?by=distance",
            "/api/v1/learning/holding");

    private ListCosts() {}

    static void run() throws Exception {
        HttpClient http = HttpClient.newHttpClient();
        try (FilledShop few = FilledShop.of(FEW);
                FilledShop many = FilledShop.of(MANY)) {
            for (String list : LISTS) {
                new Rounds(
                                "%s (%d statements, %d)"
                                        .formatted(list, statements(http, few, list), statements(http, many, list)),
                                11)
                        .with("%,d jobs".formatted(FEW), 1, () -> get(http, few, list))
                        .with("%,d jobs".formatted(MANY), 1, () -> get(http, many, list))
                        .run();
            }
        }
    }

    private static int statements(HttpClient http, FilledShop shop, String list)
            throws IOException, InterruptedException {
        get(http, shop, list);
        int before = shop.statements();
        get(http, shop, list);
        return shop.statements() - before;
    }

    private static String get(HttpClient http, FilledShop shop, String list) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + shop.port() + list))
                .build();
        HttpResponse<String> answer = http.send(request, HttpResponse.BodyHandlers.ofString());
        if (answer.statusCode() != 200) {
            throw new IllegalStateException(list + " answered " + answer.statusCode() + ": " + answer.body());
        }
        return answer.body();
    }
}
