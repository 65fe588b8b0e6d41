package dev.stayfixed.telling.delivery;

import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;

/** Work that comes round again; every bean of this type is started with the scheduler, on one instance at a time. */
public record Background(RecurringTask<Void> task) {}
