package dev.stayfixed.telling;

import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.Languages;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;

/** The settings: who is told of what, by shop and by job. */
@Service
public class Notices {

    private final StoredNotices stored;
    private final Jobs jobs;
    private final Vehicles vehicles;
    private final Languages languages;
    private final Durably durably;

    Notices(StoredNotices stored, Jobs jobs, Vehicles vehicles, Languages languages, Durably durably) {
        this.stored = stored;
        this.languages = languages;
        this.jobs = jobs;
        this.vehicles = vehicles;
        this.durably = durably;
    }

    public ShopNotices ofShop() {
        return durably.read(stored::ofShop);
    }

    /**
     * Replaces the shop's settings.
     *
     * @param wanted whose version does not count
     */
    public ShopNotices change(IfMatch ifMatch, ShopNotices wanted) {
        return durably.write(() -> {
            durably.hold("notification settings");
            ShopNotices present = stored.ofShop();
            ifMatch.check(present.version());
            stored.keep(new ShopNotices(
                    present.version() + 1,
                    wanted.technicianEmail(),
                    wanted.technicianKinds(),
                    wanted.driverKinds(),
                    wanted.signature(),
                    wanted.silentDays(),
                    wanted.comebackDays(),
                    wanted.comebackDistance()));
            if (!wanted.sameComebacks(present)) {
                vehicles.judgeAgain();
            }
            return stored.ofShop();
        });
    }

    public JobNotices ofJob(UUID jobId) {
        return durably.read(() -> {
            jobs.get(jobId);
            return stored.ofJob(jobId);
        });
    }

    /**
     * Replaces the settings of a job.
     *
     * @param wanted whose version and whose mark of the driver's own stop do not count
     */
    public JobNotices change(UUID jobId, IfMatch ifMatch, JobNotices wanted) {
        return durably.write(() -> {
            jobs.get(jobId);
            durably.hold("notification settings");
            JobNotices present = stored.ofJob(jobId);
            ifMatch.check(present.version());
            stored.keep(
                    jobId,
                    new JobNotices(
                            present.version() + 1,
                            wanted.technicianEmail(),
                            wanted.driverEmail(),
                            wanted.driverLanguage().map(this::known),
                            wanted.technicianKinds(),
                            wanted.driverKinds(),
                            wanted.silentDays(),
                            false));
            return stored.ofJob(jobId);
        });
    }

    /** In which language the driver of a job is written to; nothing, where it is that of the shop. */
    public void driverReads(UUID jobId, Optional<String> language) {
        durably.write(() -> {
            jobs.get(jobId);
            durably.hold("notification settings");
            JobNotices present = stored.ofJob(jobId);
            JobNotices wanted = present.inLanguage(language.map(this::known));
            if (!wanted.equals(present)) {
                stored.keep(jobId, wanted);
            }
            return wanted;
        });
    }

    private String known(String tag) {
        return languages
                .named(tag)
                .map(Locale::getLanguage)
                .orElseThrow(() -> Refused.content(new Mistake(
                        "driverLanguage",
                        tag,
                        "one of "
                                + languages.all().stream()
                                        .map(Locale::getLanguage)
                                        .collect(Collectors.joining(", ")))));
    }
}
