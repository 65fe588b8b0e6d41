package dev.stayfixed.simulator;

import java.util.function.Predicate;

/**
 * When a monitor runs to a decision. The figures are typical ones, simplified; a real car's service information states its own.
 *
 * @param start what the start of the drive must offer, else the monitor is not enabled in this driving cycle
 * @param holds what must hold, second by second
 * @param seconds for how long
 * @param unbroken whether the seconds must follow one another
 */
record Enabling(Predicate<Start> start, Predicate<Sample> holds, int seconds, boolean unbroken) {

    static Enabling anyStart(int seconds, Predicate<Sample> holds) {
        return new Enabling(s -> true, holds, seconds, false);
    }

    static Enabling steady(int seconds, Predicate<Sample> holds) {
        return new Enabling(s -> true, holds, seconds, true);
    }

    Enabling after(Predicate<Start> required) {
        return new Enabling(required, holds, seconds, unbroken);
    }
}
