package dev.stayfixed.bench;

import dev.stayfixed.StayfixedApplication;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;

/** The page of a drive with a log of 200,000 rows, of 36,000, and the page of a drive without a log. */
final class DrivePageCosts {

    private DrivePageCosts() {}

    static void run() throws Exception {
        try (ConfigurableApplicationContext service = new SpringApplicationBuilder(StayfixedApplication.class)
                .run(
                        "--server.port=0",
                        "--spring.profiles.active=",
                        "--stayfixed.background=false",
                        "--spring.main.banner-mode=off",
                        "--logging.level.root=warn",
                        "--spring.datasource.url=jdbc:h2:file:"
                                + Files.createTempDirectory("stayfixed-bench").resolve("shop")
                                + ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE;MODE=PostgreSQL")) {
            int port = service.getEnvironment().getRequiredProperty("local.server.port", Integer.class);
            HttpClient http = HttpClient.newHttpClient();
            String without = without(port);
            String hour = with(http, port, 36_000);
            String long200 = with(http, port, 200_000);
            new Rounds("the page of a drive", 15)
                    .with("without a log", 5, () -> get(http, without))
                    .with("with a log of 36,000 rows", 5, () -> get(http, hour))
                    .with("with a log of 200,000 rows", 5, () -> get(http, long200))
                    .with("a part of that", 5, () -> get(http, long200 + "?from=5000&to=5600"))
                    .run();
        }
    }

    private static Answer job(int port, String plate) {
        Shop shop = new Shop(new Client(port));
        Answer job = shop.job(shop.vehicle(plate), "{\"code\":\"P0420\"}");
        shop.repair(job, "2026-03-01T10:00:00Z");
        return job;
    }

    private static String without(int port) {
        Answer drive = new Client(port)
                .post(
                        "/api/v1/vehicles/" + job(port, "without").at("/vehicleId") + "/drives",
                        Shop.body("2026-03-14T07:30:00Z", Shop.RAN_CLEAN))
                .is(201);
        return "http://127.0.0.1:" + port + "/drives/" + drive.id();
    }

    private static String with(HttpClient http, int port, int rows) throws IOException, InterruptedException {
        HttpResponse<String> answer = http.send(
                HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/api/v1/vehicles/"
                                + job(port, "with " + rows).at("/vehicleId") + "/drives"))
                        .header("Content-Type", "text/csv")
                        .POST(HttpRequest.BodyPublishers.ofByteArray(LogCosts.log(rows, true)))
                        .build(),
                HttpResponse.BodyHandlers.ofString());
        if (answer.statusCode() != 201) {
            throw new IllegalStateException("a log was answered " + answer.statusCode() + ": " + answer.body());
        }
        return "http://127.0.0.1:" + port
                + answer.headers().firstValue("Location").orElseThrow().replace("/api/v1", "");
    }

    private static String get(HttpClient http, String page) throws IOException, InterruptedException {
        HttpResponse<String> answer =
                http.send(HttpRequest.newBuilder(URI.create(page)).build(), HttpResponse.BodyHandlers.ofString());
        if (answer.statusCode() != 200) {
            throw new IllegalStateException(page + " answered " + answer.statusCode());
        }
        return answer.body();
    }
}
