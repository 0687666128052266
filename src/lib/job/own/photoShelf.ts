/**
 * Where photographs are kept: apart from the jobs, so that an edit of a number writes no photograph,
 * and in a database, since the few megabytes that hold the jobs hold ten photographs at most. A
 * photograph never changes; it is written once and read when its job is opened.
 */
import type { Photo } from './ownLines';

export type Photos = Readonly<Record<string, Photo>>;

export type PhotosKept =
  | { readonly ok: true }
  | { readonly ok: false; readonly code: 'full' | 'unavailable'; readonly message: string };

export interface PhotoShelf {
  /** Whether what is written is still there at the next visit. */
  readonly lasting: boolean;
  /** Those of `ids` that are kept for this job. */
  read(job: string, ids: readonly string[]): Promise<Photos>;
  write(job: string, photos: Photos): Promise<PhotosKept>;
  /** All photographs of a job. */
  remove(job: string): Promise<void>;
  /** Let go what no line shows any more and no window can still undo: older than `before`. */
  tidy(job: string, shown: ReadonlySet<string>, before: number): Promise<void>;
}

const DATABASE = 'soakline';
const STORE = 'photos';

interface Row {
  readonly job: string;
  readonly id: string;
  readonly photo: Photo;
  /** Milliseconds since 1970. */
  readonly at: number;
}

/** A shelf in the browser's database. `now` is a parameter so that tests can fix the time. */
export function databasePhotos(factory: IDBFactory, now: () => number = Date.now): PhotoShelf {
  let opened: Promise<IDBDatabase> | undefined;

  const database = (): Promise<IDBDatabase> => {
    opened ??= new Promise<IDBDatabase>((resolve, reject) => {
      const request = factory.open(DATABASE, 1);
      request.onupgradeneeded = () =>
        request.result.createObjectStore(STORE, { keyPath: ['job', 'id'] });
      request.onerror = () => reject(request.error ?? new Error('no database'));
      request.onsuccess = () => {
        // Another window may need the database for itself; the next use opens it again.
        request.result.onversionchange = () => {
          request.result.close();
          opened = undefined;
        };
        resolve(request.result);
      };
    }).catch((thrown: unknown) => {
      opened = undefined;
      throw thrown;
    });
    return opened;
  };

  /** One transaction; settled only once it is on the disk or has failed. */
  const transaction = async (
    mode: IDBTransactionMode,
    work: (store: IDBObjectStore) => void,
  ): Promise<void> => {
    const open = await database();
    return new Promise((resolve, reject) => {
      const running = open.transaction(STORE, mode);
      running.oncomplete = () => resolve();
      running.onerror = running.onabort = () => reject(running.error ?? new Error('not kept'));
      work(running.objectStore(STORE));
    });
  };

  return {
    lasting: true,
    async read(job, ids) {
      const found: Record<string, Photo> = {};
      await transaction('readonly', (store) => {
        for (const id of ids) {
          const request = store.get([job, id]) as IDBRequest<Row | undefined>;
          request.onsuccess = () => {
            if (request.result) found[id] = request.result.photo;
          };
        }
      });
      return found;
    },
    async write(job, photos) {
      try {
        await transaction('readwrite', (store) => {
          for (const [id, photo] of Object.entries(photos)) {
            store.put({ job, id, photo, at: now() } satisfies Row);
          }
        });
        return { ok: true };
      } catch (thrown) {
        return notKept(thrown);
      }
    },
    remove: (job) =>
      transaction('readwrite', (store) => void store.delete(IDBKeyRange.bound([job], [job, []]))),
    tidy: (job, shown, before) =>
      transaction('readwrite', (store) => {
        const request = store.openCursor(IDBKeyRange.bound([job], [job, []]));
        request.onsuccess = () => {
          const cursor = request.result;
          if (!cursor) return;
          const { id, at } = cursor.value as Row;
          if (!shown.has(id) && at < before) cursor.delete();
          cursor.continue();
        };
      }),
  };
}

const notKept = (thrown: unknown): PhotosKept =>
  thrown instanceof Error && /quota/i.test(`${thrown.name} ${thrown.message}`)
    ? {
        ok: false,
        code: 'full',
        message: 'The browser has no room left for this photo: save the job as a file.',
      }
    : {
        ok: false,
        code: 'unavailable',
        message: 'The browser does not keep photos here: save the job as a file.',
      };

/** A shelf that lasts as long as the page: for tests, and where the browser has no database. */
export function memoryPhotos(): PhotoShelf {
  const rows = new Map<string, Photo>();
  const key = (job: string, id: string) => `${job}\n${id}`;
  return {
    lasting: false,
    read: (job, ids) =>
      Promise.resolve(
        Object.fromEntries(
          ids.flatMap((id) => {
            const photo = rows.get(key(job, id));
            return photo ? [[id, photo]] : [];
          }),
        ),
      ),
    write(job, photos) {
      for (const [id, photo] of Object.entries(photos)) rows.set(key(job, id), photo);
      return Promise.resolve({ ok: true });
    },
    remove(job) {
      for (const name of rows.keys()) if (name.startsWith(`${job}\n`)) rows.delete(name);
      return Promise.resolve();
    },
    tidy: () => Promise.resolve(),
  };
}
