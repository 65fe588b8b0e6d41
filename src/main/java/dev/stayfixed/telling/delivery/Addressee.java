package dev.stayfixed.telling.delivery;

import java.util.UUID;

/**
 * Who gets messages.
 *
 * @param target the receiver's id in its channel
 */
record Addressee(String channel, UUID target) {

    static Addressee of(Delivery.Draft draft) {
        return new Addressee(draft.channel(), draft.target());
    }

    static Addressee of(Delivery delivery) {
        return new Addressee(delivery.channel(), delivery.target());
    }

    /** Of what {@link #name()} gave. */
    static Addressee named(String name) {
        int colon = name.lastIndexOf(':');
        return new Addressee(name.substring(0, colon), UUID.fromString(name.substring(colon + 1)));
    }

    String name() {
        return channel + ":" + target;
    }
}
