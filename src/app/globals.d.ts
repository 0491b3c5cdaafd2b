/// <reference types="vite/client" />
/** Version of the program, put in by the build. */
declare const __PERREV_VERSION__: string;
