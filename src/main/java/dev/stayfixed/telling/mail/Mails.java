package dev.stayfixed.telling.mail;

import dev.stayfixed.jobs.Shops;
import dev.stayfixed.platform.Languages;
import dev.stayfixed.telling.Event;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.EventWritten;
import dev.stayfixed.telling.JobNotices;
import dev.stayfixed.telling.Notices;
import dev.stayfixed.telling.ServiceAddress;
import dev.stayfixed.telling.ShopNotices;
import dev.stayfixed.telling.Story;
import dev.stayfixed.telling.delivery.Delivery;
import dev.stayfixed.telling.delivery.Outbox;
import java.util.Locale;
import java.util.Set;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.event.EventListener;
import org.springframework.mail.javamail.JavaMailSender;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Writes the mails about an event: to the technician, and to the driver while the job is open. */
@Component
class Mails {

    private final Notices notices;
    private final Recipients recipients;
    private final Outbox outbox;
    private final JsonMapper json;
    private final boolean canSend;
    private final ServiceAddress service;
    private final MailWording wording;
    private final Shops shops;
    private final Languages languages;

    Mails(
            Notices notices,
            Recipients recipients,
            Outbox outbox,
            JsonMapper json,
            ObjectProvider<JavaMailSender> sender,
            ServiceAddress service,
            MailWording wording,
            Shops shops,
            Languages languages) {
        this.notices = notices;
        this.recipients = recipients;
        this.outbox = outbox;
        this.json = json;
        this.canSend = sender.getIfAvailable() != null;
        this.service = service;
        this.wording = wording;
        this.shops = shops;
        this.languages = languages;
    }

    @EventListener
    void on(EventWritten written) {
        if (!canSend) {
            return;
        }
        Event event = written.event();
        Story story = written.story();
        ShopNotices shop = notices.ofShop();
        JobNotices job = notices.ofJob(story.jobId());
        Set<EventKind> technicians = job.technicianKinds().orElse(shop.technicianKinds());
        if (technicians.contains(event.kind())) {
            job.technicianEmail().or(shop::technicianEmail).ifPresent(to -> toTechnician(event, story, to));
        }
        Set<EventKind> drivers = job.driverKinds().orElse(shop.driverKinds());
        if (drivers.contains(event.kind()) && EventKind.forDriver().contains(event.kind()) && !story.jobClosed()) {
            job.driverEmail().ifPresent(to -> toDriver(event, story, to, shop, job));
        }
    }

    private void toTechnician(Event event, Story story, String address) {
        MailWording.Words words = wording.forTechnician(
                event.kind(),
                shops.settings().units().words(event.kind()),
                story,
                service.of("/jobs/" + story.jobId()).toString());
        Recipients.Recipient recipient = recipients.withAddress(address.toLowerCase(Locale.ROOT));
        add(event, recipient, "t", new Letter(words.subject(), words.body(), null));
    }

    private void toDriver(Event event, Story story, String address, ShopNotices shop, JobNotices job) {
        Recipients.Recipient recipient = recipients.withAddress(address.toLowerCase(Locale.ROOT));
        if (recipient.stopped()) {
            return;
        }
        String stop = service.of("/mail-stop/").toString();
        Locale language = job.driverLanguage().flatMap(languages::named).orElseGet(languages::own);
        MailWording.Words words = wording.forDriver(language, event.kind(), story, shop.signature());
        add(event, recipient, "d", new Letter(words.subject(), words.body(), stop));
    }

    private void add(Event event, Recipients.Recipient recipient, String role, Letter letter) {
        outbox.add(new Delivery.Draft(
                MailChannel.NAME,
                recipient.id(),
                "m:" + role + recipient.id() + ":" + event.jobId().orElse(event.id()),
                event.id(),
                event.jobId(),
                event.kind().name(),
                json.writeValueAsString(letter),
                false));
    }
}
