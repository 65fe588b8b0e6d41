package dev.stayfixed.worklist.pages;

import dev.stayfixed.jobs.pages.Slots;
import dev.stayfixed.jobs.pages.VerdictWords;
import dev.stayfixed.platform.Texts;
import dev.stayfixed.telling.Event;
import dev.stayfixed.telling.EventKind;
import dev.stayfixed.telling.Inbox;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.web.pages.TechnicianPage;
import dev.stayfixed.worklist.Attention;
import dev.stayfixed.worklist.OpenJob;
import dev.stayfixed.worklist.OpenJobs;
import io.swagger.v3.oas.annotations.Hidden;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.RequestParam;

/** The shop's first page: the open jobs, those first that need a person now. */
@Hidden
@TechnicianPage
class FirstPage {

    static final int PAGE_SIZE = 25;

    private final OpenJobs openJobs;
    private final Inbox inbox;
    private final Texts texts;

    FirstPage(OpenJobs openJobs, Inbox inbox, Texts texts) {
        this.texts = texts;
        this.openJobs = openJobs;
        this.inbox = inbox;
    }

    /** Jobs that need the same, one after the other. */
    record Group(Attention attention, String words, String advice, String all, List<Entry> jobs) {}

    /** A job and what is next in it, in words. */
    record Entry(OpenJob job, List<Stands> faults, String next) {}

    /**
     * A fault in a row of the list.
     *
     * @param slots SVG
     */
    record Stands(String code, String slots, String words) {}

    @GetMapping("/")
    String show(
            @RequestParam(defaultValue = "") String q,
            @RequestParam(defaultValue = "") String need,
            @RequestParam(defaultValue = "1") String page,
            @ModelAttribute("show") Show show,
            Model model) {
        String text = q.length() > 100 ? q.substring(0, 100) : q;
        Optional<Attention> only =
                Stream.of(Attention.values()).filter(a -> slug(a).equals(need)).findFirst();
        OpenJobs.Part part =
                openJobs.find(text, only, page.matches("\\d{1,6}") ? Integer.parseInt(page) : 1, PAGE_SIZE);
        model.addAttribute("alerts", alerts());
        model.addAttribute("q", text);
        model.addAttribute("need", only.map(FirstPage::slug).orElse(""));
        model.addAttribute("needs", needs(part));
        model.addAttribute("part", part);
        model.addAttribute("groups", groups(part, show));
        model.addAttribute("all", all(part));
        return "first";
    }

    /**
     * Something that was reported.
     *
     * @param todo what to do about it
     */
    record Reported(Event event, String todo) {}

    /** The comeback of an open job stands in the list, and first. */
    private List<Reported> alerts() {
        List<Event> unread = inbox.alerts();
        Set<UUID> open = openJobs.openOf(
                unread.stream().flatMap(event -> event.jobId().stream()).toList());
        return unread.stream()
                .filter(event -> event.kind() != EventKind.CAME_BACK
                        || event.jobId().filter(open::contains).isEmpty())
                .map(event -> new Reported(event, texts.choice("worklist.todo", event.kind())))
                .toList();
    }

    /** One choice of the list. */
    record Need(String slug, String words, String count) {}

    /** How many jobs, as a person reads it. */
    private static String count(OpenJobs.Part part, int jobs) {
        return Math.min(jobs, OpenJobs.COUNTED) + (part.sample() || jobs > OpenJobs.COUNTED ? "+" : "");
    }

    private static String all(OpenJobs.Part part) {
        int counted = part.counts().values().stream()
                .mapToInt(jobs -> Math.min(jobs, OpenJobs.COUNTED))
                .sum();
        boolean more = part.counts().values().stream().anyMatch(jobs -> jobs > OpenJobs.COUNTED);
        return counted + (part.sample() || more ? "+" : "");
    }

    private List<Need> needs(OpenJobs.Part part) {
        return part.counts().entrySet().stream()
                .map((Map.Entry<Attention, Integer> e) -> new Need(
                        slug(e.getKey()), texts.choice("worklist.attention", e.getKey()), count(part, e.getValue())))
                .toList();
    }

    private List<Group> groups(OpenJobs.Part part, Show show) {
        List<Group> groups = new ArrayList<>();
        for (OpenJob job : part.jobs()) {
            if (groups.isEmpty() || groups.get(groups.size() - 1).attention() != job.attention()) {
                groups.add(new Group(
                        job.attention(),
                        texts.choice("worklist.attention", job.attention()),
                        texts.choice("worklist.advice", job.attention()),
                        count(part, part.counts().getOrDefault(job.attention(), 1)),
                        new ArrayList<>()));
            }
            groups.get(groups.size() - 1)
                    .jobs()
                    .add(new Entry(
                            job,
                            job.faults().stream()
                                    .map(fault -> stands(fault, show))
                                    .toList(),
                            VerdictWords.next(job).map(show::words).orElse("")));
        }
        return groups;
    }

    private static Stands stands(OpenJob.Line fault, Show show) {
        return new Stands(
                fault.code(),
                Slots.svg(fault.standing(), fault.trips(), show),
                show.words(fault.standing().said()));
    }

    static String slug(Attention attention) {
        return attention.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
