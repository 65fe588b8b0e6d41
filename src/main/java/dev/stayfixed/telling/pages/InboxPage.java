package dev.stayfixed.telling.pages;

import dev.stayfixed.platform.Page;
import dev.stayfixed.telling.Event;
import dev.stayfixed.telling.Inbox;
import dev.stayfixed.web.pages.TechnicianPage;
import io.swagger.v3.oas.annotations.Hidden;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** What happened, for the shop to read, the latest first. */
@Hidden
@TechnicianPage
@RequestMapping("/inbox")
class InboxPage {

    private static final int PAGE_SIZE = 25;

    private final Inbox inbox;

    InboxPage(Inbox inbox) {
        this.inbox = inbox;
    }

    /** @param only "unread", or all */
    @GetMapping
    String show(
            @RequestParam(defaultValue = "") String only,
            @RequestParam(required = false) @Nullable String after,
            Model model) {
        boolean unreadOnly = only.equals("unread");
        Page<Event> page = inbox.page(unreadOnly, Page.Request.of(PAGE_SIZE, after));
        model.addAttribute("unreadOnly", unreadOnly);
        model.addAttribute("page", page);
        return "inbox";
    }

    @PostMapping("/{id}/read")
    String read(@PathVariable UUID id, @RequestParam(defaultValue = "") String only) {
        inbox.read(id);
        return back(only);
    }

    /** Marks it as read and goes to its job. */
    @PostMapping("/{id}/open")
    String open(@PathVariable UUID id) {
        return inbox.read(id).jobId().map(job -> "redirect:/jobs/" + job).orElse("redirect:/inbox");
    }

    @PostMapping("/read")
    String readAll() {
        inbox.readAll();
        return "redirect:/inbox?said=all-read";
    }

    private static String back(String only) {
        return only.equals("unread") ? "redirect:/inbox?only=unread" : "redirect:/inbox";
    }
}
