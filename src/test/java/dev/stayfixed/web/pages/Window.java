package dev.stayfixed.web.pages;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.util.ArrayList;
import java.util.List;

/** A browser window that remembers what went wrong in it: messages of the console, breaches of the content policy, 5xx answers. */
final class Window implements AutoCloseable {

    private final BrowserContext context;
    private final Page page;
    private final List<String> troubles = new ArrayList<>();

    Window(BrowserContext context) {
        this.context = context;
        this.page = context.newPage();
        page.onConsoleMessage(message -> {
            boolean isExpected = message.text().contains("status of 4");
            if ((message.type().equals("error") || message.type().equals("warning")) && !isExpected) {
                troubles.add(message.type() + ": " + message.text());
            }
        });
        page.onPageError(error -> troubles.add("script: " + error));
        page.onResponse(response -> {
            if (response.status() >= 500) {
                troubles.add(response.status() + " " + response.url());
            }
        });
    }

    Page page() {
        return page;
    }

    /** No violation of the rules that axe can check, no trouble so far, and nothing wider than the window. */
    void isSound(String where) {
        List<String> violations = new AxeBuilder(page)
                        .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"))
                        .analyze()
                        .getViolations()
                        .stream()
                        .map(v -> v.getId() + " " + v.getNodes().get(0).getHtml())
                        .toList();
        assertThat(violations).as("axe on " + where).isEmpty();
        isQuiet(where);
        int over = (int) page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth");
        assertThat(over).as("pixels wider than the window on " + where).isLessThanOrEqualTo(0);
    }

    void isQuiet(String where) {
        assertThat(troubles)
                .as("console, content policy and server on " + where)
                .isEmpty();
    }

    @Override
    public void close() {
        context.close();
    }
}
