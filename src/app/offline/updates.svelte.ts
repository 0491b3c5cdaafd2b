/** Registers the offline copy, and tells when a newer version waits. */

class Updates {
  /** A newer version has been fetched and takes over when asked to. */
  #waiting = $state.raw<ServiceWorker | null>(null);
  readonly isReady = $derived(this.#waiting !== null);

  async start(): Promise<void> {
    if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
    const registration = await navigator.serviceWorker.register('./sw.js').catch(() => null);
    if (!registration) return;
    this.#watch(registration);
    registration.addEventListener('updatefound', () => this.#watch(registration));
  }

  /** Lets the newer version take over, and loads the page again with it. The job is kept. */
  load(): void {
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload());
    this.#waiting?.postMessage('take-over');
  }

  #watch(registration: ServiceWorkerRegistration): void {
    // Without a controller this is the first visit: nothing older to replace.
    if (!navigator.serviceWorker.controller) return;
    if (registration.waiting) this.#follow(registration.waiting);
    if (registration.installing) this.#follow(registration.installing);
  }

  /** Offers a version from when it is fetched until it takes over. */
  #follow(version: ServiceWorker): void {
    const tell = (): void => {
      if (version.state === 'installed') this.#waiting = version;
      else if (this.#waiting === version) this.#waiting = null;
    };
    tell();
    version.addEventListener('statechange', tell);
  }
}

export const updates = new Updates();
