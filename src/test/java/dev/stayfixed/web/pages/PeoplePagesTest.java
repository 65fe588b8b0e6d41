package dev.stayfixed.web.pages;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import dev.stayfixed.platform.OnH2;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.TestPropertySource;

/** From a service without people to one where everybody signs in, in a service of its own. */
@OnH2
@NeedsBrowser
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestPropertySource(properties = "stayfixed.people.tries-per-minute=40")
class PeoplePagesTest {

    private static final String PASSWORD = "four words are enough";

    @LocalServerPort
    int port;

    private Browsers browsers;

    @BeforeAll
    void open() {
        browsers = new Browsers();
    }

    @AfterAll
    void close() {
        browsers.close();
    }

    @Test
    void theFirstOwnerInvitesAndEachDoesWhatTheyMay() {
        String invitation;
        try (Window window = browsers.window(390, true, ColorScheme.DARK)) {
            Page page = window.page();
            Technician owner = new Technician(page, "http://127.0.0.1:" + port);
            owner.goTo("/");
            page.getByRole(
                            AriaRole.LINK,
                            new Page.GetByRoleOptions().setName("Settings").setExact(true))
                    .click();
            page.getByRole(
                            AriaRole.LINK,
                            new Page.GetByRoleOptions().setName("People").setExact(true))
                    .click();
            assertThat(page.locator("main")).containsText("Nobody has to sign in");
            window.isSound("people before there are any");
            owner.follow("Make the first owner");
            owner.press("Become the owner");
            assertThat(page.locator("#summary")).containsText("say what you are called");
            window.isSound("the first owner, incomplete");
            owner.field("Name").fill("Rana Holt");
            owner.field("Mail address").fill("rana@shop.example");
            owner.field("Password").fill(PASSWORD);
            owner.press("Become the owner");
            assertThat(page.locator("[role=status]").first()).containsText("You are the owner now");
            owner.field("Name").fill("Tomas Vale");
            owner.field("Mail address").fill("tomas@shop.example");
            owner.press("Make an invitation");
            invitation = page.locator("#invitation-link").textContent();
            window.isSound("people, with an invitation");
            owner.goTo("/settings/tokens");
            owner.field("For").fill("dongle of the red van");
            owner.press("Make it");
            assertThat(page.locator("#token-secret")).hasText(Pattern.compile("stayfixed_[A-Za-z0-9_-]{43}"));
            window.isSound("tokens");
            owner.goTo("/account");
            window.isSound("an account");
            owner.press("Sign out");
            assertThat(page).hasTitle(Pattern.compile("Sign in.*"));
            owner.goTo("/jobs/new");
            owner.field("Mail address").fill("rana@shop.example");
            owner.field("Password").fill("something else");
            owner.press("Sign in");
            assertThat(page.locator("#summary")).containsText("do not belong together");
            window.isSound("a wrong password");
            owner.field("Password").fill(PASSWORD);
            owner.press("Sign in");
            assertThat(page).hasURL(Pattern.compile(".*/jobs/new"));
            window.isQuiet("an owner");
        }
        for (boolean script : new boolean[] {true, false}) {
            try (Window window = browsers.window(1280, script, ColorScheme.LIGHT)) {
                Page page = window.page();
                Technician technician = new Technician(page, "http://127.0.0.1:" + port);
                if (script) {
                    page.navigate(invitation);
                    window.isSound("an invitation");
                    technician.field("New password").fill(PASSWORD);
                    technician.press("Choose it and come in");
                    page.navigate(invitation);
                    assertThat(page.locator("main")).containsText("not good any more");
                } else {
                    technician.goTo("/sign-in");
                    technician.field("Mail address").fill("tomas@shop.example");
                    technician.field("Password").fill(PASSWORD);
                    technician.press("Sign in");
                }
                technician.goTo("/");
                assertThat(page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Account")))
                        .isVisible();
                assertThat(page.getByRole(AriaRole.LINK, new Page.GetByRoleOptions().setName("Settings")))
                        .hasCount(0);
                technician.goTo("/settings");
                assertThat(page.locator("h1")).containsText("You may not do this here");
                technician.goTo("/account");
                window.isQuiet("a technician");
            }
        }
    }
}
