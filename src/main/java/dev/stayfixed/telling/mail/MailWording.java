package dev.stayfixed.telling.mail;

import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.Story;
import java.util.Optional;

/** What a mail says. A technician reads the code and the reason; a driver reads what it means and what to do next. */
final class MailWording {

    private MailWording() {}

    /** A mail without its closing lines. */
    record Words(String subject, String body) {}

    /** For the shop. */
    static Words forTechnician(EventKind kind, Story story) {
        StringBuilder body = new StringBuilder();
        line(body, "Vehicle", story.vehicle());
        line(body, "Job", story.reference());
        line(body, "Code", story.code());
        line(body, "Monitor", story.monitor());
        line(body, "Stood at", story.before());
        line(body, "Stands at", story.now());
        line(body, "Why", story.reason());
        line(body, "Next", story.nextStep());
        return new Words(oneLine(story.about() + ": " + kind.words()), body.toString());
    }

    private static void line(StringBuilder body, String name, @org.jspecify.annotations.Nullable String value) {
        if (value != null) {
            body.append(name).append(": ").append(value).append('\n');
        }
    }

    /** For the driver. The advice on a flashing lamp is common practice, no source. */
    static Words forDriver(EventKind kind, Story story) {
        return new Words(
                oneLine("Your " + story.vehicle() + ": " + headline(kind)),
                meaning(kind) + "\n\nWhat to do next: " + nextStep(kind) + "\n");
    }

    private static String headline(EventKind kind) {
        return switch (kind) {
            case CONFIRMED_FIXED -> "the repair is confirmed";
            case FAILED_ONCE -> "one check has failed";
            case RECURRED, CAME_BACK -> "the fault is back";
            case VERDICT_REVISED -> "a correction";
            case NOTHING_HEARD -> "we are waiting for your next drive";
            case CODES_CLEARED -> "the count has begun again";
            default -> kind.words();
        };
    }

    private static String meaning(EventKind kind) {
        return switch (kind) {
            case CONFIRMED_FIXED ->
                "The car has tested the repaired part by itself on the drives that were needed, and it passed each time. We take the"
                        + " repair for proven.";
            case FAILED_ONCE ->
                "On your last drive the car tested the repaired part and it did not pass. One such result is not the end: the next"
                        + " test decides.";
            case RECURRED -> "The car has tested the repaired part again and it did not pass. The repair has not held.";
            case CAME_BACK -> "The fault had been fixed, and now the car reports it again.";
            case VERDICT_REVISED ->
                "A record of a drive reached us late or was corrected, and with it our last message to you no longer holds.";
            case NOTHING_HEARD -> "We have had no record of a drive for some days, and the repair is not proven yet.";
            case CODES_CLEARED ->
                "The memory of the engine computer was cleared, or the battery was disconnected. The drives before that can no longer"
                        + " be counted.";
            default -> "There is news about the repair.";
        };
    }

    private static String nextStep(EventKind kind) {
        return switch (kind) {
            case CONFIRMED_FIXED -> "nothing. Should the warning lamp light again, call us.";
            case FAILED_ONCE ->
                "drive as usual and send us the record of the next drive. Should the warning lamp flash, take your foot off, stop"
                        + " where it is safe, and call us.";
            case RECURRED, CAME_BACK ->
                "call us for an appointment. Should the warning lamp flash, take your foot off, stop where it is safe, and call us.";
            case VERDICT_REVISED -> "ask us how it stands now before you rely on the earlier message.";
            case NOTHING_HEARD -> "when you next have a drive to make, make it as we agreed and send us its record.";
            case CODES_CLEARED -> "please let nobody clear codes for now, and send us the records of your next drives.";
            default -> "ask us.";
        };
    }

    /** The last lines of a driver's mail. */
    static String driversClosing(Optional<String> signature, String stopLink) {
        return "\n" + signature.map(s -> s + "\n\n").orElse("")
                + "You get this mail because your shop follows up on a repair of your car. To get no more of them, open\n"
                + stopLink
                + "\n";
    }

    private static String oneLine(String text) {
        String line = text.replaceAll("[\\r\\n\\t]+", " ").strip();
        return line.length() <= 200 ? line : line.substring(0, 199) + "…";
    }
}
