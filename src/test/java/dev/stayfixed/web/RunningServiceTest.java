package dev.stayfixed.web;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.OtherInstance;
import dev.stayfixed.platform.RealPostgres;
import dev.stayfixed.platform.Wire;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.yaml.snakeyaml.Yaml;

/** The service as docker-compose.yml starts it: with exactly its settings, behind a named proxy, and looked at by its health check. */
@Timeout(240)
class RunningServiceTest {

    private static final Pattern VARIABLE = Pattern.compile("\\$\\{([A-Z_]+)(:-([^}]*))?}");

    @Test
    void withTheSettingsOfTheComposeFile(@TempDir Path folder) throws Exception {
        JdbcConnectionDetails postgres = RealPostgres.emptyDatabase();
        URI address = URI.create(postgres.getJdbcUrl().substring("jdbc:".length()));
        try (Wire wire = new Wire(address.getPort())) {
            Map<String, String> settings = composed();
            // The places of this machine; the proxy of the test is on it, too.
            settings.put("stayfixed.proxy", "127.0.0.1");
            settings.put(
                    "stayfixed.secret-key-file", folder.resolve("secret.key").toString());
            settings.put("stayfixed.temporary", folder.toString());
            settings.put("server.address", "127.0.0.1");
            settings.put("management.server.port", "0");
            settings.put("spring.datasource.hikari.connection-timeout", "500");
            settings.put("spring.datasource.hikari.validation-timeout", "250");
            settings.put("spring.datasource.hikari.data-source-properties.socketTimeout", "1");
            try (OtherInstance service = new OtherInstance(
                    "jdbc:postgresql://127.0.0.1:" + wire.port() + address.getPath(),
                    postgres,
                    settings.entrySet().stream()
                            .map(setting -> setting.getKey() + "=" + setting.getValue())
                            .toArray(String[]::new))) {
                behindItsProxy(new Client(service.port()));
                Client health = new Client(service.managementPort());
                measured(new Client(service.port()), health);
                awayAndBack(wire, health);
                new Client(service.port()).get("/actuator/health").isProblem(404, "not-found");
                new Client(service.port()).get("/actuator/prometheus").isProblem(404, "not-found");
            }
        }
        assertThat(folder.resolve("secret.key")).exists();
    }

    private static void behindItsProxy(Client client) {
        // Who comes by a proxy is not at this machine, and has to sign in.
        Answer page = client.get("/", "X-Forwarded-Proto", "https", "X-Forwarded-For", "203.0.113.9")
                .is(401);
        assertThat(page.header("Strict-Transport-Security")).isNotEmpty();
        assertThat(client.get("/").is(200).header("Strict-Transport-Security")).isEmpty();
        client.get("/", "X-Forwarded-Host", "elsewhere.example").is(421);
    }

    private static void measured(Client client, Client health) {
        Shop shop = new Shop(client);
        Answer vehicle = shop.vehicle("measured coupe");
        shop.repair(shop.job(vehicle), "2020-01-01T00:00:00Z");
        shop.drive(vehicle, "2020-01-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.drive(vehicle, "2020-01-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        assertThat(health.get("/actuator/prometheus").is(200).body())
                .contains(
                        "stayfixed_drives_judged_total{outcome=\"PASSED\"} 2.0",
                        "stayfixed_verdicts_total{kind=\"CONFIRMED_FIXED\"} 1.0",
                        "stayfixed_messages_oldest_seconds 0.0");
        health.get("/actuator/env").is(404);
    }

    private static void awayAndBack(Wire wire, Client health) throws IOException {
        assertThat(health.get("/actuator/health/readiness").is(200).body()).contains("UP");
        wire.cut();
        try {
            health.get("/actuator/health/readiness").is(503);
            assertThat(health.get("/actuator/health/liveness").is(200).body()).contains("UP");
        } finally {
            wire.mend();
        }
        Answer ready = health.get("/actuator/health/readiness");
        while (ready.status() == 503) {
            ready = health.get("/actuator/health/readiness");
        }
        ready.is(200);
    }

    /** What the environment of the service in the file sets, with the defaults of its variables. */
    private static Map<String, String> composed() throws IOException {
        String text = Files.readString(Path.of("docker-compose.yml"));
        assertThat(VARIABLE.matcher(text).results().map(MatchResult::group))
                .as("every variable has a default")
                .allSatisfy(variable -> assertThat(variable).contains(":-"));
        Map<String, Map<String, Map<String, Object>>> file = new Yaml().load(text);
        Map<String, Map<String, Object>> services = requireNonNull(file.get("services"));
        assertThat(services).containsOnlyKeys("proxy", "service", "postgresql");
        assertThat(services.values())
                .allSatisfy(service -> assertThat(service)
                        .containsEntry("read_only", true)
                        .containsEntry("cap_drop", List.of("ALL"))
                        .containsEntry("security_opt", List.of("no-new-privileges:true"))
                        .containsKeys("healthcheck", "tmpfs"));
        assertThat(services.get("postgresql")).as("it starts alone").doesNotContainKey("depends_on");
        Map<String, String> environment = new TreeMap<>();
        requireNonNull((Map<?, ?>) requireNonNull(services.get("service")).get("environment"))
                .forEach((name, value) -> environment.put(
                        setting(String.valueOf(name)),
                        VARIABLE.matcher(String.valueOf(value)).replaceAll(found -> found.group(3))));
        return environment;
    }

    /** As Boot reads an environment variable; each is a setting that stands in our files, or one of Boot. */
    private static String setting(String variable) {
        return switch (variable) {
            case "STAYFIXED_DB_HOST", "STAYFIXED_DB_PASSWORD" -> variable;
            case "STAYFIXED_PUBLIC_URL" -> "stayfixed.public-url";
            case "STAYFIXED_SECRET_KEY" -> "stayfixed.secret-key";
            case "STAYFIXED_SECRET_KEY_FILE" -> "stayfixed.secret-key-file";
            case "SPRING_PROFILES_ACTIVE",
                    "SERVER_ADDRESS",
                    "STAYFIXED_PROXY",
                    "STAYFIXED_TEMPORARY",
                    "MANAGEMENT_SERVER_PORT",
                    "LOGGING_STRUCTURED_FORMAT_CONSOLE" ->
                variable.toLowerCase(Locale.ROOT).replace('_', '.');
            default ->
                throw new AssertionError("docker-compose.yml: " + variable + " is no setting that this test knows");
        };
    }
}
