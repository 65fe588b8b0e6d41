package dev.stayfixed.telling.feeds;

import dev.stayfixed.platform.Texts;
import dev.stayfixed.telling.FollowUps;
import io.swagger.v3.oas.annotations.Hidden;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RestController;

/** Follow-ups for a calendar program. The link is the only key, so it is in no list and no log of this service. */
@Hidden
@RestController
class CalendarFeed {

    private static final MediaType CALENDAR = new MediaType("text", "calendar", StandardCharsets.UTF_8);

    private final FollowUps followUps;
    private final Texts texts;
    private final Clock clock;

    CalendarFeed(FollowUps followUps, Texts texts, Clock clock) {
        this.followUps = followUps;
        this.texts = texts;
        this.clock = clock;
    }

    @GetMapping("/calendar/{token}.ics")
    ResponseEntity<byte[]> calendar(@PathVariable String token) {
        String text = CalendarText.of(followUps.calendar(token), clock.instant(), texts);
        return ResponseEntity.ok().contentType(CALENDAR).body(text.getBytes(StandardCharsets.UTF_8));
    }
}
