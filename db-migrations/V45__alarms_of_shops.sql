-- An alarm names the shop of its receiver, because it rings where nobody is asked for which shop; until now there was one.
update scheduled_tasks set task_instance = '00000000-0000-4000-8000-000000000001:' || task_instance where task_name = 'deliver';
