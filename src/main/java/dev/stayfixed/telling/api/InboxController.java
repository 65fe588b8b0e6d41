package dev.stayfixed.telling.api;

import dev.stayfixed.platform.Page;
import dev.stayfixed.telling.Event;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.Inbox;
import dev.stayfixed.web.api.Link;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@Tag(name = "Inbox", description = "What happened, for the shop to read")
@RestController
@RequestMapping(Link.BASE + "/inbox")
class InboxController {

    private final Inbox inbox;

    InboxController(Inbox inbox) {
        this.inbox = inbox;
    }

    /** Something that happened. */
    record EventAnswer(
            UUID id,
            EventKind kind,
            Instant occurredAt,
            String summary,
            @Nullable UUID jobId,
            @Nullable UUID faultId,
            @Nullable Instant readAt,
            @Nullable Link job) {

        static EventAnswer of(Event e) {
            return new EventAnswer(
                    e.id(),
                    e.kind(),
                    e.occurredAt(),
                    e.summary(),
                    e.jobId().orElse(null),
                    e.faultId().orElse(null),
                    e.readAt().orElse(null),
                    e.jobId().map(id -> Link.to("jobs", id)).orElse(null));
        }
    }

    /** Part of the inbox. */
    record InboxAnswer(List<EventAnswer> items, @Nullable String next, long unread) {}

    /** How many were marked. */
    record Marked(int marked) {}

    @Operation(summary = "What happened, the latest first")
    @GetMapping
    InboxAnswer page(
            @RequestParam(defaultValue = "false") boolean unread,
            @RequestParam(required = false) @Nullable Integer limit,
            @RequestParam(required = false) @Nullable String cursor) {
        Page<Event> page = inbox.page(unread, Page.Request.of(limit, cursor));
        return new InboxAnswer(
                page.items().stream().map(EventAnswer::of).toList(), page.next().orElse(null), inbox.unread());
    }

    @Operation(summary = "Mark one as read")
    @PostMapping("/{id}/read")
    EventAnswer read(@PathVariable UUID id) {
        return EventAnswer.of(inbox.read(id));
    }

    @Operation(summary = "Mark all as read")
    @PostMapping("/read")
    Marked readAll() {
        return new Marked(inbox.readAll());
    }
}
