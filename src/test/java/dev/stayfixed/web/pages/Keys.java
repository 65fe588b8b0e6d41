package dev.stayfixed.web.pages;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;

/** Uses the keyboard alone. */
final class Keys {

    private static final int MOST_STEPS = 60;

    private final Page page;

    Keys(Page page) {
        this.page = page;
    }

    /** Goes on by the tab key until an element has the focus. */
    Keys to(String selector) {
        for (int i = 0; i < MOST_STEPS; i++) {
            if ((boolean) page.locator(selector).evaluate("e => e === document.activeElement")) {
                return this;
            }
            page.keyboard().press("Tab");
        }
        assertThat(false).as(selector + " is reached by the tab key").isTrue();
        return this;
    }

    Keys type(String text) {
        page.keyboard().type(text);
        return this;
    }

    void press(String key) {
        page.keyboard().press(key);
    }
}
