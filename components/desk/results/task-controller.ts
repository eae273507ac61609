import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { WordedHost } from '../worded-host.js';
import type { DeskStrings } from '../strings.js';
import { LatestTask } from './latest-task.js';

/** A part of the desk that asks one question at a time; the view shows whether it is under way or has failed. */
export abstract class TaskController implements ReactiveController {
  protected readonly host: ReactiveControllerHost;
  protected readonly latest: LatestTask;

  constructor(host: WordedHost, failed: keyof DeskStrings['forms']['failed']) {
    this.host = host;
    this.latest = new LatestTask({
      failed: () => host.words.forms.failed[failed],
      onChange: () => host.requestUpdate(),
    });
    host.addController(this);
  }

  get busy(): boolean {
    return this.latest.busy;
  }

  get trouble(): string {
    return this.latest.trouble;
  }

  hostDisconnected(): void {
    this.latest.stop();
  }
}
