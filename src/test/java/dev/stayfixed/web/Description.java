package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.problem.ProblemType;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import tools.jackson.databind.JsonNode;

/** The service describes itself, completely. */
abstract class Description extends OverHttp {

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    RequestMappingHandlerMapping routes;

    @Test
    void everyRouteIsDescribedInOpenApi31() {
        Answer answer = client.get("/api/openapi").is(200);
        assertThat(answer.at("/openapi")).startsWith("3.1.");
        Set<String> described = new TreeSet<>();
        JsonNode paths = answer.json().at("/paths");
        paths.propertyNames()
                .forEach(path -> paths.get(path)
                        .propertyNames()
                        .forEach(method -> described.add(method.toUpperCase(Locale.ROOT) + " " + path)));
        Set<String> served = new TreeSet<>();
        routes.getHandlerMethods().forEach((mapping, method) -> {
            if (mapping.getMethodsCondition().isEmpty()) {
                return;
            }
            mapping.getPatternValues().stream()
                    .filter(path -> path.startsWith("/api/v1") || path.startsWith("/problems"))
                    .map(path -> path.replaceAll(":[^}]+}", "}"))
                    .forEach(path ->
                            mapping.getMethodsCondition().getMethods().forEach(m -> served.add(m + " " + path)));
        });
        assertThat(served).hasSizeGreaterThan(20);
        assertThat(described).isEqualTo(served);
    }

    @Test
    void driveSubmissionsAreDescribedWithTheirShape() {
        JsonNode document = client.get("/api/openapi").json();
        JsonNode content = document.at("/paths/~1api~1v1~1vehicles~1{vehicleId}~1drives/post/requestBody/content");
        assertThat(content.propertyNames()).contains("application/json", "text/plain");
        assertThat(document.at("/components/schemas/DriveSubmission/properties").propertyNames())
                .contains("start", "end", "takenAt", "summary", "codesClearedBefore", "scans");
    }

    @Test
    void theDescriptionCanBeBrowsed() {
        Answer redirect = client.get("/api/docs");
        assertThat(redirect.status()).isEqualTo(302);
        Answer page = client.get(redirect.header("Location")).is(200);
        assertThat(page.header("Content-Type")).startsWith("text/html");
        assertThat(page.header("Content-Security-Policy"))
                .contains("script-src 'self'")
                .doesNotContain("unsafe-eval");
        assertThat(page.body()).doesNotContainPattern("<script(?![^>]*src=)").doesNotContainPattern("\\son[a-z]+=");
    }

    @Test
    void everyTypeOfProblemIsDocumented() {
        assertThat(client.get("/problems").is(200).json()).hasSize(ProblemType.values().length);
        for (ProblemType type : ProblemType.values()) {
            Answer documented = client.get(type.path()).is(200);
            assertThat(documented.at("/title")).isEqualTo(type.title());
            assertThat(documented.at("/meaning")).hasSizeGreaterThan(20);
            assertThat(documented.at("/whatToDo")).hasSizeGreaterThan(10);
            Answer page = client.get(type.path(), "Accept", "text/html").is(200);
            assertThat(page.header("Content-Type")).startsWith("text/html");
            assertThat(page.body()).contains("<h1>" + type.title() + "</h1>");
        }
    }

    @Test
    void codesAndRuleSetsCanBeLookedUp() {
        Answer code = client.get("/api/v1/codes/p0420").is(200);
        assertThat(code.at("/code")).isEqualTo("P0420");
        assertThat(code.at("/group")).isEqualTo("CATALYST");
        assertThat(client.get("/api/v1/codes/P1420")
                        .json()
                        .at("/manufacturerSpecific")
                        .asBoolean())
                .isTrue();
        String id = client.get("/api/v1/rule-sets").at("/0/id");
        assertThat(client.get("/api/v1/rule-sets/" + id)
                        .json()
                        .at("/drive/warmUpRise")
                        .asDouble())
                .isEqualTo(22);
    }

    @Test
    void aScanIsReadWithoutBeingStored() {
        var before = rows();
        Answer answer =
                client.postText("/api/v1/scans", "43 01 04 20\nnonsense").is(200);
        assertThat(answer.at("/understood/confirmed/0")).isEqualTo("P0420");
        assertThat(List.of(answer.at("/lines/0/outcome"), answer.at("/lines/1/outcome")))
                .doesNotHaveDuplicates()
                .startsWith("UNDERSTOOD");
        assertThat(client.post("/api/v1/scans", "{\"text\":\"43 01 04 20\"}").at("/understood/confirmed/0"))
                .isEqualTo("P0420");
        assertThat(rows()).isEqualTo(before);
    }
}
