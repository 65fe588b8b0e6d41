package dev.stayfixed.judging.pages;

import dev.stayfixed.drive.running.RunningPreset;
import dev.stayfixed.drive.signal.Signal;
import dev.stayfixed.jobs.entry.EngineCheckEntry;
import dev.stayfixed.web.pages.Form;
import dev.stayfixed.web.pages.Show;
import dev.stayfixed.wording.Scale;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The form of a check with the engine running: figures in the units of the shop. */
final class CheckForm {

    /** °C. */
    private static final List<String> TEMPERATURES = List.of("target", "startMax", "ambientMin", "ambientMax");

    private CheckForm() {}

    /** Holds the typical figures of a preset. */
    static Form of(UUID faultId, RunningPreset preset, Show show) {
        EngineCheckEntry typical = EngineCheckEntry.of(faultId, preset);
        Form form = Form.empty()
                .put("faultId", faultId.toString())
                .put("preset", preset.name())
                .put("signal", typical.signal() == null ? "" : typical.signal().name())
                .put("state", typical.state() == null ? "" : typical.state().name());
        put(form, "target", typical.target(), show);
        put(form, "minutes", typical.minutes(), show);
        put(form, "speedMin", typical.speedMin(), show);
        put(form, "speedMax", typical.speedMax(), show);
        put(form, "startMax", typical.startMax(), show);
        put(form, "min", typical.min(), show);
        put(form, "max", typical.max(), show);
        return form;
    }

    private static void put(Form form, String field, @Nullable Double figure, Show show) {
        if (figure != null) {
            double shown =
                    scale(form, field, show).map(scale -> scale.shown(figure)).orElse(figure);
            form.put(field, show.plain(shown));
        }
    }

    /** In which a field is typed; empty where every shop types it alike. */
    static Optional<Scale> scale(Form form, String field, Show show) {
        if (TEMPERATURES.contains(field)) {
            return Optional.of(show.scale(Signal.COOLANT));
        }
        return field.equals("min") || field.equals("max") ? signal(form).map(show::scale) : Optional.empty();
    }

    private static Optional<Signal> signal(Form form) {
        return Arrays.stream(Signal.values())
                .filter(signal -> form.has("signal", signal.name()))
                .findFirst();
    }

    /** Empty where none was chosen yet, or one that there is not. */
    static Optional<RunningPreset> preset(@Nullable String name) {
        return Arrays.stream(RunningPreset.values())
                .filter(preset -> preset.name().equals(name))
                .findFirst();
    }
}
