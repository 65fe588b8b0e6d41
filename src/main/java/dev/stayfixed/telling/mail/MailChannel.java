package dev.stayfixed.telling.mail;

import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.telling.delivery.Channel;
import dev.stayfixed.telling.delivery.Delivery;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Date;
import java.util.Optional;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.mail.MailException;
import org.springframework.mail.javamail.JavaMailSender;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Sends one mail by SMTP. Its Message-ID is the same in every repetition, so that a mail program can tell. */
@Component
class MailChannel implements Channel {

    static final String NAME = "mail";

    private static final Logger LOG = LoggerFactory.getLogger(MailChannel.class);

    private final Recipients recipients;
    private final ObjectProvider<JavaMailSender> sender;
    private final Durably durably;
    private final JsonMapper json;
    private final Clock clock;
    private final String from;

    MailChannel(
            Recipients recipients,
            ObjectProvider<JavaMailSender> sender,
            Durably durably,
            JsonMapper json,
            Clock clock,
            MailSettings settings) {
        this.recipients = recipients;
        this.sender = sender;
        this.durably = durably;
        this.json = json;
        this.clock = clock;
        this.from = settings.from();
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public Answer send(Delivery delivery) {
        Letter letter = json.readValue(delivery.payload(), Letter.class);
        Optional<Recipients.Recipient> to = durably.read(() -> recipients.find(delivery.target()));
        if (to.isEmpty() || (to.get().stopped() && letter.stop() != null)) {
            return new Answer.NotWanted("the receiver stopped the mails");
        }
        JavaMailSender server = sender.getIfAvailable();
        if (server == null) {
            return later("no mail server is configured any more");
        }
        try {
            Letter whole = letter.stop() == null ? letter : withLink(letter, letter.stop(), delivery.target());
            server.send(message(delivery, whole, to.get().address()));
            return new Answer.Accepted("taken by the mail server", Optional.empty());
        } catch (MailException | MessagingException e) {
            LOG.debug("a mail was not taken", e);
            SmtpFailure failure = SmtpFailure.of(e);
            return failure.isFinal() ? new Answer.Refused(failure.words(), Optional.empty()) : later(failure.words());
        }
    }

    private Letter withLink(Letter letter, String address, UUID to) {
        String token =
                durably.read(() -> recipients.token(to)).orElseGet(() -> durably.write(() -> recipients.newToken(to)));
        String link = address + token;
        return new Letter(letter.subject(), letter.text() + link + "\n", link);
    }

    private static Answer later(String detail) {
        return new Answer.TryLater(detail, Optional.empty(), Optional.empty());
    }

    private MimeMessage message(Delivery delivery, Letter letter, String to) throws MessagingException {
        MimeMessage message = new NamedMessage("<" + delivery.id() + "@stayfixed.invalid>");
        message.setFrom(new InternetAddress(from, true));
        message.setRecipient(jakarta.mail.Message.RecipientType.TO, new InternetAddress(to, true));
        message.setSubject(letter.subject(), StandardCharsets.UTF_8.name());
        message.setText(letter.text(), StandardCharsets.UTF_8.name());
        message.setSentDate(Date.from(clock.instant()));
        message.setHeader("Auto-Submitted", "auto-generated");
        if (letter.stop() != null) {
            message.setHeader("List-Unsubscribe", "<" + letter.stop() + ">");
            message.setHeader("List-Unsubscribe-Post", "List-Unsubscribe=One-Click");
        }
        return message;
    }

    /** A message that keeps the name it was given. */
    private static final class NamedMessage extends MimeMessage {

        private final String name;

        NamedMessage(String name) {
            super((Session) null);
            this.name = name;
        }

        @Override
        protected void updateMessageID() throws MessagingException {
            setHeader("Message-ID", name);
        }
    }
}
