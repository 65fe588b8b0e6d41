package dev.stayfixed.telling;

import java.time.Instant;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;

/** Ids that grow in the order in which they are made: RFC 9562, version 7, with a counter in the 12 bits after the time. */
final class EventIds {

    private final AtomicLong last = new AtomicLong();

    UUID next(Instant now) {
        long ticket = last.updateAndGet(before -> Math.max(before + 1, now.toEpochMilli() << 12));
        long high = (ticket >>> 12 << 16) | 0x7000L | (ticket & 0xFFF);
        return new UUID(high, UUID.randomUUID().getLeastSignificantBits());
    }
}
