package dev.stayfixed.telling.mail;

import dev.stayfixed.platform.LinkToken;
import dev.stayfixed.platform.SecretLinks;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.telling.delivery.Outbox;
import java.time.Clock;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** The link in every mail to a driver: whoever holds it can stop the mails to that one address, and let them go on. */
@Service
public class MailStop implements SecretLinks {

    private final Recipients recipients;
    private final Outbox outbox;
    private final Durably durably;
    private final Clock clock;

    MailStop(Recipients recipients, Outbox outbox, Durably durably, Clock clock) {
        this.recipients = recipients;
        this.outbox = outbox;
        this.durably = durably;
        this.clock = clock;
    }

    @Override
    public String under() {
        return "mail-stop";
    }

    @Override
    public Optional<UUID> shopOf(String token) {
        return durably.readThrough(LinkToken.hash(token), () -> recipients.shopOf(token));
    }

    /** Whether the mails are stopped. */
    public boolean isStopped(String token) {
        return durably.read(() -> known(token).stopped());
    }

    /** Stops them, also those that wait to be sent. Once more changes nothing. */
    public void stop(String token) {
        durably.write(() -> {
            Recipients.Recipient recipient = known(token);
            recipients.stop(recipient.id(), clock.instant());
            outbox.cancelAllTo(MailChannel.NAME, recipient.id());
        });
    }

    public void goOn(String token) {
        durably.write(() -> recipients.goOn(known(token).id()));
    }

    private Recipients.Recipient known(String token) {
        return recipients
                .byToken(token)
                .orElseThrow(() -> new Refused(
                        ProblemType.NOT_FOUND,
                        "this link is not one that this service gives; copy the whole line from the mail"));
    }
}
