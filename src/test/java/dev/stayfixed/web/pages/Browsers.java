package dev.stayfixed.web.pages;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.ReducedMotion;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Windows of an installed Chromium. The browser is one for all tests and ends with their process; every window begins with nothing of
 * the others. How long a page may take is set here for all: a busy machine is slow, and a test that is right does not wait at all.
 */
public final class Browsers implements AutoCloseable {

    private static final double ANSWER = 60_000;
    private static final double CHANGE = 60_000;

    private static @Nullable Browser shared;

    private final List<BrowserContext> opened = new ArrayList<>();

    private static Browser browser() {
        Browser running = shared;
        if (running == null || !running.isConnected()) {
            Playwright playwright = Playwright.create(
                    new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
            running = playwright
                    .chromium()
                    .launch(new BrowserType.LaunchOptions()
                            .setExecutablePath(executable())
                            .setTimeout(ANSWER)
                            .setArgs(List.of(
                                    "--no-sandbox",
                                    "--disable-gpu",
                                    "--disable-dev-shm-usage",
                                    "--disable-background-networking",
                                    "--disable-component-update",
                                    "--no-first-run")));
            shared = running;
            PlaywrightAssertions.setDefaultAssertionTimeout(CHANGE);
        }
        return running;
    }

    static Path executable() {
        return Path.of(Optional.ofNullable(System.getenv("STAYFIXED_BROWSER")).orElse("/usr/bin/chromium"));
    }

    /** A window of its own, with its own cookies. */
    Window window(int width, boolean script, ColorScheme scheme) {
        return new Window(context(new Browser.NewContextOptions()
                .setViewportSize(width, 900)
                .setJavaScriptEnabled(script)
                .setColorScheme(scheme)
                .setReducedMotion(ReducedMotion.REDUCE)
                .setLocale("en-GB")));
    }

    /** A person's browser of its own: windows that share cookies and what the page keeps. */
    public BrowserContext context(Browser.NewContextOptions options) {
        BrowserContext context = browser().newContext(options);
        context.setDefaultTimeout(ANSWER);
        opened.add(context);
        return context;
    }

    /** Closes what a test left open. */
    @Override
    public void close() {
        opened.forEach(BrowserContext::close);
    }
}
