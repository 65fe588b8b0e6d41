package dev.stayfixed.telling;

import dev.stayfixed.platform.Page;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** What happened, for the shop to read. */
@Service
public class Inbox {

    private static final int MOST_ALERTS = 10;

    private final StoredEvents events;
    private final Durably durably;
    private final Clock clock;

    Inbox(StoredEvents events, Durably durably, Clock clock) {
        this.events = events;
        this.durably = durably;
        this.clock = clock;
    }

    /** The latest first. */
    public Page<Event> page(boolean unreadOnly, Page.Request page) {
        return durably.read(
                () -> Page.of(events.inbox(unreadOnly, page), page, e -> new Page.Position(e.occurredAt(), e.id())));
    }

    public long unread() {
        return durably.read(events::unread);
    }

    /** What belongs on the first page and nobody has read yet, the latest first. */
    public List<Event> alerts() {
        return durably.read(() -> events.unread(EventKind.forFirstPage(), MOST_ALERTS));
    }

    /** Marks one as read; reading it again changes nothing. */
    public Event read(UUID id) {
        return durably.write(() -> {
            events.read(id, clock.instant());
            return events.find(id)
                    .filter(event -> event.kind().isForInbox())
                    .orElseThrow(() -> Refused.notFound("event", id));
        });
    }

    /** Marks all as read; how many were not. */
    public int readAll() {
        return durably.write(() -> events.readAll(clock.instant()));
    }
}
