package dev.stayfixed.web.pages;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.ReducedMotion;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** An installed Chromium, one for all tests of a class. */
final class Browsers implements AutoCloseable {

    private final Playwright playwright;
    private final Browser browser;

    Browsers() {
        playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        browser = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(executable())
                        .setArgs(List.of(
                                "--no-sandbox",
                                "--disable-gpu",
                                "--disable-background-networking",
                                "--disable-component-update",
                                "--no-first-run")));
    }

    static Path executable() {
        return Path.of(Optional.ofNullable(System.getenv("STAYFIXED_BROWSER")).orElse("/usr/bin/chromium"));
    }

    /** A window of its own, with its own cookies. */
    Window window(int width, boolean script, ColorScheme scheme) {
        BrowserContext context = browser.newContext(new Browser.NewContextOptions()
                .setViewportSize(width, 900)
                .setJavaScriptEnabled(script)
                .setColorScheme(scheme)
                .setReducedMotion(ReducedMotion.REDUCE)
                .setLocale("en-GB"));
        context.setDefaultTimeout(60_000);
        PlaywrightAssertions.setDefaultAssertionTimeout(30_000);
        return new Window(context);
    }

    @Override
    public void close() {
        browser.close();
        playwright.close();
    }
}
