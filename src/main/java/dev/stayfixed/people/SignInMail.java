package dev.stayfixed.people;

import dev.stayfixed.platform.Texts;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import java.nio.charset.StandardCharsets;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.mail.MailException;
import org.springframework.mail.javamail.JavaMailSender;
import org.springframework.stereotype.Component;

/** Mails that let people in. They go out at once, from the request that asked for them, and are kept nowhere. */
@Component
public class SignInMail {

    private static final Logger LOG = LoggerFactory.getLogger(SignInMail.class);

    private final ObjectProvider<JavaMailSender> sender;
    private final Texts texts;
    private final String from;

    SignInMail(ObjectProvider<JavaMailSender> sender, Texts texts, SignInSender settings) {
        this.sender = sender;
        this.texts = texts;
        this.from = settings.from();
    }

    public boolean canBeSent() {
        return sender.getIfAvailable() != null;
    }

    /**
     * Sends a link; whether the server took it.
     *
     * @param subject the key of its text, and
     * @param text the key of that with the link in the place {0}
     */
    public boolean send(Person to, String subject, String text, String link) {
        JavaMailSender server = sender.getIfAvailable();
        if (server == null) {
            return false;
        }
        try {
            MimeMessage message = server.createMimeMessage();
            message.setFrom(new InternetAddress(from, true));
            message.setRecipient(jakarta.mail.Message.RecipientType.TO, new InternetAddress(to.mail(), true));
            message.setSubject(texts.of(subject), StandardCharsets.UTF_8.name());
            message.setText(texts.of(text, link), StandardCharsets.UTF_8.name());
            message.setHeader("Auto-Submitted", "auto-generated");
            server.send(message);
            return true;
        } catch (MailException | MessagingException e) {
            LOG.warn(
                    "a mail that lets somebody in was not taken by the mail server: {}",
                    e.getClass().getSimpleName());
            return false;
        }
    }
}
