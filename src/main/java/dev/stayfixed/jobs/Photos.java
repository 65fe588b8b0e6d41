package dev.stayfixed.jobs;

import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.Sha256;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.platform.storage.StoredTime;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/** Pictures that belong to repairs: what a meter showed, the old part. */
@Service
public class Photos {

    /** Bytes of a file that is taken. */
    public static final int LARGEST_FILE = Picture.LARGEST_FILE;

    private static final int MOST = 24;

    /** Characters. */
    private static final int LONGEST_TEXT = 200;

    private static final String SELECT =
            "select id, repair_id, about, caption, added_at, width, height, digest from photo where shop_id = ? and ";

    private final JdbcClient jdbc;
    private final CurrentShop shop;
    private final Jobs jobs;
    private final Durably durably;
    private final Clock clock;

    Photos(JdbcClient jdbc, CurrentShop shop, Jobs jobs, Durably durably, Clock clock) {
        this.jdbc = jdbc;
        this.shop = shop;
        this.jobs = jobs;
        this.durably = durably;
        this.clock = clock;
    }

    /**
     * Takes a photo in; the same one again changes nothing.
     *
     * @param about the measurement that it shows, in the technician's words
     * @param file JPEG or PNG
     * @throws Refused when the job is closed, holds too many, or the file is no photo
     */
    public Photo add(UUID jobId, UUID repairId, Optional<String> about, Optional<String> caption, byte[] file) {
        checkLength("about", about);
        checkLength("caption", caption);
        // Before the write begins: drawing takes its time.
        Picture picture = Picture.of(file);
        String digest = Sha256.hex(picture.jpeg());
        return durably.write(() -> {
            checkOpen(jobId, repairId);
            durably.hold("photos " + jobId);
            return jdbc.sql(SELECT + "repair_id = ? and digest = ?")
                    .params(shop.id(), repairId, digest)
                    .query(Photos::photo)
                    .optional()
                    .orElseGet(() -> {
                        Photo photo = new Photo(
                                UUID.randomUUID(),
                                repairId,
                                about,
                                caption,
                                clock.instant(),
                                picture.width(),
                                picture.height(),
                                digest);
                        insert(jobId, photo, picture.jpeg());
                        return photo;
                    });
        });
    }

    private void insert(UUID jobId, Photo photo, byte[] jpeg) {
        if (ofJob(jobId).size() >= MOST) {
            throw Refused.content(new Mistake("file", (MOST + 1) + " photos", "at most " + MOST + " on a job"));
        }
        jdbc.sql("""
                        insert into photo (id, shop_id, job_id, repair_id, about, caption, added_at, width, height, digest, jpeg)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .param(photo.id())
                .param(shop.id())
                .param(jobId)
                .param(photo.repairId())
                .param(photo.about().orElse(null))
                .param(photo.caption().orElse(null))
                .param(StoredTime.of(photo.addedAt()))
                .param(photo.width())
                .param(photo.height())
                .param(photo.digest())
                .param(jpeg)
                .update();
    }

    private void checkOpen(UUID jobId, UUID repairId) {
        Job job = jobs.get(jobId);
        if (job.state() == Job.State.CLOSED) {
            throw new Refused(ProblemType.JOB_CLOSED, "the job is closed; reopen it with a reason before changing it");
        }
        if (job.repairs().stream().noneMatch(repair -> repair.id().equals(repairId))) {
            throw Refused.notFound("repair of this job", repairId);
        }
    }

    private static void checkLength(String path, Optional<String> text) {
        text.filter(found -> found.length() > LONGEST_TEXT).ifPresent(found -> {
            throw Refused.content(
                    new Mistake(path, found.length() + " characters", "at most " + LONGEST_TEXT + " characters"));
        });
    }

    /** Of a job, the oldest first. */
    public List<Photo> ofJob(UUID jobId) {
        return durably.read(() -> jdbc.sql(SELECT + "job_id = ? order by added_at, id")
                .params(shop.id(), jobId)
                .query(Photos::photo)
                .list());
    }

    /**
     * A picture, as JPEG.
     *
     * @throws Refused where the job has no such photo
     */
    public byte[] jpeg(UUID jobId, UUID id) {
        return durably.read(() -> jdbc.sql("select jpeg from photo where shop_id = ? and job_id = ? and id = ?")
                .params(shop.id(), jobId, id)
                .query((row, n) -> row.getBytes("jpeg"))
                .optional()
                .orElseThrow(() -> Refused.notFound("photo of this job", id)));
    }

    /** All pictures of a job, as JPEG, by the ids of their photos. */
    public Map<UUID, byte[]> jpegs(UUID jobId) {
        return durably.read(() -> {
            Map<UUID, byte[]> found = new HashMap<>();
            jdbc.sql("select id, jpeg from photo where shop_id = ? and job_id = ?")
                    .params(shop.id(), jobId)
                    .query(row -> {
                        found.put(row.getObject("id", UUID.class), row.getBytes("jpeg"));
                    });
            return found;
        });
    }

    /**
     * Takes a photo away.
     *
     * @throws Refused when the job is closed, or has no such photo
     */
    public void remove(UUID jobId, UUID id) {
        durably.write(() -> {
            Photo photo = ofJob(jobId).stream()
                    .filter(one -> one.id().equals(id))
                    .findFirst()
                    .orElseThrow(() -> Refused.notFound("photo of this job", id));
            checkOpen(jobId, photo.repairId());
            return jdbc.sql("delete from photo where shop_id = ? and id = ?")
                    .params(shop.id(), id)
                    .update();
        });
    }

    private static Photo photo(ResultSet row, int number) throws SQLException {
        return new Photo(
                row.getObject("id", UUID.class),
                row.getObject("repair_id", UUID.class),
                Optional.ofNullable(row.getString("about")),
                Optional.ofNullable(row.getString("caption")),
                StoredTime.in(row, "added_at"),
                row.getInt("width"),
                row.getInt("height"),
                row.getString("digest"));
    }
}
