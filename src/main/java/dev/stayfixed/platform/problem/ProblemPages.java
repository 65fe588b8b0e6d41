package dev.stayfixed.platform.problem;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Arrays;
import java.util.List;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.util.HtmlUtils;

/** One page for each type of problem. */
@Tag(name = "Problems", description = "What each type of problem means and what to do about it")
@RestController
@RequestMapping("/problems")
class ProblemPages {

    /** A type of problem as it is documented. */
    record Documented(String type, String title, int status, String meaning, String whatToDo) {
        static Documented of(ProblemType type) {
            return new Documented(type.path(), type.title(), type.status(), type.meaning(), type.remedy());
        }
    }

    @Operation(summary = "All types of problems")
    @GetMapping(produces = MediaType.APPLICATION_JSON_VALUE)
    List<Documented> all() {
        return Arrays.stream(ProblemType.values()).map(Documented::of).toList();
    }

    @Operation(summary = "One type of problem")
    @GetMapping(path = "/{slug}", produces = MediaType.APPLICATION_JSON_VALUE)
    Documented one(@PathVariable String slug) {
        return Documented.of(known(slug));
    }

    @Operation(summary = "One type of problem, as a page")
    @GetMapping(path = "/{slug}", produces = MediaType.TEXT_HTML_VALUE)
    String page(@PathVariable String slug) {
        ProblemType type = known(slug);
        return """
                <!DOCTYPE html>
                <html lang="en">
                <head><meta charset="utf-8"><title>%1$s</title></head>
                <body>
                <h1>%1$s</h1>
                <p>Answered with HTTP status %2$d, type <code>%3$s</code>.</p>
                <h2>What it means</h2>
                <p>%4$s</p>
                <h2>What to do</h2>
                <p>%5$s</p>
                </body>
                </html>
                """.formatted(
                        HtmlUtils.htmlEscape(type.title()),
                        type.status(),
                        type.path(),
                        HtmlUtils.htmlEscape(type.meaning()),
                        HtmlUtils.htmlEscape(type.remedy()));
    }

    private static ProblemType known(String slug) {
        return ProblemType.ofSlug(slug)
                .orElseThrow(() -> new Refused(
                        ProblemType.NOT_FOUND, "no type of problem has this name; GET /problems lists them all"));
    }
}
