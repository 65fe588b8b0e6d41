package dev.stayfixed.telling.mail;

import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.MessagingException;
import jakarta.mail.SendFailedException;
import java.net.ConnectException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.util.stream.Stream;
import javax.net.ssl.SSLException;
import org.springframework.mail.MailAuthenticationException;
import org.springframework.mail.MailSendException;

/**
 * What a mail server meant, for people.
 *
 * @param words what it replied, or why it could not
 * @param isFinal a reply of the 5yz series to the receiver's address or to the message, RFC 5321 section 4.2.1
 */
record SmtpFailure(String words, boolean isFinal) {

    static SmtpFailure of(Exception e) {
        Throwable cause = root(e);
        String said = String.valueOf(cause.getMessage()).replaceAll("\\s+", " ").strip();
        if (said.matches("[245]\\d\\d[ -].*")) {
            return new SmtpFailure(
                    "the mail server answered: " + said, said.startsWith("5") && cause instanceof SendFailedException);
        }
        return new SmtpFailure(silence(cause), false);
    }

    private static String silence(Throwable cause) {
        if (cause instanceof AuthenticationFailedException || cause instanceof MailAuthenticationException) {
            return "the mail server did not accept the name and password set for it";
        }
        if (cause instanceof UnknownHostException) {
            return "the name of the mail server leads nowhere";
        }
        if (cause instanceof SocketTimeoutException) {
            return "the mail server did not answer in time";
        }
        if (cause instanceof SSLException) {
            return "no secure connection to the mail server could be made";
        }
        return cause instanceof ConnectException
                ? "the mail server takes no connections"
                : "the mail could not be handed to the mail server; the log of the service says more";
    }

    private static Throwable root(Exception e) {
        Throwable cause = e instanceof MailSendException failed && failed.getMessageExceptions().length > 0
                ? failed.getMessageExceptions()[0]
                : e;
        if (cause instanceof MessagingException outer && outer.getNextException() != null) {
            cause = outer.getNextException();
        }
        return Stream.iterate(cause, inner -> inner != null, SmtpFailure::within)
                .reduce(cause, (outer, inner) -> inner);
    }

    private static @org.jspecify.annotations.Nullable Throwable within(Throwable outer) {
        return outer.getCause() == outer ? null : outer.getCause();
    }
}
