package dev.stayfixed.web.pages;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;

/** Does in the browser what a technician does, by the words on the pages. */
final class Technician {

    /** $03: P0420 confirmed; $01 PID $01: MIL on, one code, catalyst not complete; $01 PID $31: 120 km. */
    static final String FIRST_SCAN = "43 01 04 20\n41 01 81 07 65 01\n41 31 00 78\nnonsense";

    static final String RAN_CLEAN = "41 41 00 07 65 00\n47 00\n43 00";
    static final String DID_NOT_RUN = "41 41 00 07 65 65\n47 00\n43 00";
    static final String RAN_AND_CONFIRMED = "41 41 00 07 65 00\n47 01 04 20\n43 01 04 20";
    static final String RAN_AND_FAILED = "41 41 00 07 65 00\n47 01 04 20\n43 00";

    private final Page page;
    private final String service;

    Technician(Page page, String service) {
        this.page = page;
        this.service = service;
    }

    void goTo(String path) {
        page.navigate(service + path);
    }

    /** Sends a form by its button, and goes on when the answer has taken the place of the page. */
    void press(String words) {
        leaveBy(button(words));
    }

    /** Follows a link, and goes on when its page has taken the place of this one. */
    void follow(String words) {
        leaveBy(link(words));
    }

    /** By a mark that the next page does not carry: an address may stay the same, and words may stand on both pages. */
    void leaveBy(Locator target) {
        target.evaluate("() => document.documentElement.setAttribute('data-left', '')");
        activate(target);
        assertThat(page.locator("html[data-left]")).hasCount(0);
    }

    /** By the keyboard: what the page fills in meanwhile may move an element away from under the pointer. */
    static void activate(Locator target) {
        target.press("Enter");
    }

    Locator button(String words) {
        return page.getByRole(
                AriaRole.BUTTON, new Page.GetByRoleOptions().setName(words).setExact(true));
    }

    Locator link(String words) {
        return page.getByRole(
                AriaRole.LINK, new Page.GetByRoleOptions().setName(words).setExact(true));
    }

    Locator field(String label) {
        return page.getByLabel(label, new Page.GetByLabelOptions().setExact(true));
    }

    Locator heading(String words) {
        return page.getByRole(AriaRole.HEADING, new Page.GetByRoleOptions().setName(words));
    }

    void openJob(String vehicle, String customer) {
        goTo("/jobs/new");
        field("Vehicle").fill(vehicle);
        field("Customer").fill(customer);
        field("Code 1").fill("P0420");
        press("Open the job");
    }

    /** From the job's page and back to it, past the hand-over. */
    void recordRepair(String what, String at) {
        follow("Record a repair");
        field("What was done").fill(what);
        field("Done at").fill(at);
        field("The codes were cleared with the repair").check(new Locator.CheckOptions().setForce(true));
        press("Record the repair");
        backToTheJob();
    }

    Page page() {
        return page;
    }

    /** From the hand-over that follows a repair; a job that was handed over already is there at once. */
    void backToTheJob() {
        if (address().endsWith("/sheet")) {
            follow("Back to the job");
        }
    }

    /** From the job's page to the drive's. */
    void addDrive(String start, String scan) {
        follow("Add a drive");
        field("Paste the scan").fill(scan);
        field("Engine start").fill(start);
        field("Engine run time").fill("30");
        press("Add the drive");
    }

    /** From the page of a job: a warm-up with the typical figures, for its first fault. */
    void stateWarmUp() {
        page.locator(".bench-side .links a").first().click();
        follow("Warm-up");
        press("State the check");
    }

    String address() {
        return page.url().replaceFirst("\\?.*", "").substring(service.length());
    }
}
