package dev.stayfixed.telling.delivery;

import java.util.UUID;

/**
 * Who gets messages.
 *
 * @param shop who tells them
 * @param target the receiver's id in its channel
 */
record Addressee(UUID shop, String channel, UUID target) {

    static Addressee of(UUID shop, Delivery.Draft draft) {
        return new Addressee(shop, draft.channel(), draft.target());
    }

    static Addressee of(UUID shop, Delivery delivery) {
        return new Addressee(shop, delivery.channel(), delivery.target());
    }

    /** Of what {@link #name()} gave. */
    static Addressee named(String name) {
        String[] parts = name.split(":", 3);
        return new Addressee(UUID.fromString(parts[0]), parts[1], UUID.fromString(parts[2]));
    }

    String name() {
        return shop + ":" + channel + ":" + target;
    }
}
