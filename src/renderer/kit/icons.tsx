import type { ReactNode } from 'react';

/** All drawn on a 16 × 16 board with a 1.5 line, in the text's colour. */
function Icon({ children, size = 16 }: { readonly children: ReactNode; readonly size?: number | undefined }) {
  return (
    <svg
      className="icon"
      width={size}
      height={size}
      viewBox="0 0 16 16"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.5"
      strokeLinecap="square"
      aria-hidden="true"
      focusable="false"
    >
      {children}
    </svg>
  );
}

/** An eight-sided plate with a bar: no way on. */
export const StopIcon = () => (
  <Icon>
    <path d="M5.2 1.5h5.6l3.7 3.7v5.6l-3.7 3.7H5.2l-3.7-3.7V5.2z" fill="currentColor" />
    <path d="M4.8 8h6.4" stroke="var(--sheet)" strokeWidth="2" />
  </Icon>
);

export const CautionIcon = () => (
  <Icon>
    <path d="M8 2 14.5 14h-13z" />
    <path d="M8 6.5v3.2M8 11.8v.2" />
  </Icon>
);

export const NoteIcon = () => (
  <Icon>
    <path d="M3 1.8h7l3 3v9.4H3z" />
    <path d="M5.5 7.5h5M5.5 10.5h5" />
  </Icon>
);

export const AcceptedIcon = () => (
  <Icon>
    <path d="M2.5 8.5 6.5 12.5 13.5 4" />
  </Icon>
);

/** Two posts and a lifted bar. */
export const GateOpenIcon = () => (
  <Icon>
    <path d="M3 14V6M13 14v-3M3 7.5 12 2" />
  </Icon>
);

/** Two posts and a bar across. */
export const GateShutIcon = () => (
  <Icon>
    <path d="M3 14V4M13 14V4" />
    <path d="M3 8h10" strokeWidth="3" />
  </Icon>
);

export const GateNoneIcon = () => (
  <Icon>
    <path d="M5 8h6" />
  </Icon>
);

export const AddIcon = () => (
  <Icon>
    <path d="M8 3v10M3 8h10" />
  </Icon>
);

export const RemoveIcon = () => (
  <Icon>
    <path d="m4 4 8 8M12 4l-8 8" />
  </Icon>
);

export const FindIcon = () => (
  <Icon>
    <circle cx="6.8" cy="6.8" r="4.3" />
    <path d="m10.2 10.2 3.6 3.6" />
  </Icon>
);

export const SettingsIcon = () => (
  <Icon>
    <path d="M2 4.5h7M12.5 4.5H14M2 11.5h1.5M7 11.5h7" />
    <circle cx="10.7" cy="4.5" r="1.7" />
    <circle cx="5.2" cy="11.5" r="1.7" />
  </Icon>
);

export const FitIcon = () => (
  <Icon>
    <path d="M2 5V2h3M11 2h3v3M14 11v3h-3M5 14H2v-3" />
    <path d="M5 8h6" />
  </Icon>
);

export const ZoomInIcon = () => (
  <Icon>
    <circle cx="6.8" cy="6.8" r="4.3" />
    <path d="m10.2 10.2 3.6 3.6M6.8 5v3.6M5 6.8h3.6" />
  </Icon>
);

export const ZoomOutIcon = () => (
  <Icon>
    <circle cx="6.8" cy="6.8" r="4.3" />
    <path d="m10.2 10.2 3.6 3.6M5 6.8h3.6" />
  </Icon>
);

export const DownIcon = () => (
  <Icon>
    <path d="m4 6 4 4 4-4" />
  </Icon>
);

export const RightIcon = () => (
  <Icon>
    <path d="m6 4 4 4-4 4" />
  </Icon>
);

/** Nodes that hang on one another. */
export const WorksIcon = () => (
  <Icon size={20}>
    <path d="M1.5 2h5v3.5h-5zM9.5 6.2h5v3.5h-5zM1.5 10.5h5V14h-5z" />
    <path d="M6.5 3.8H8v8.4H6.5M8 8h1.5" />
  </Icon>
);

/** A dimension line between two witness lines. */
export const DrawingIcon = () => (
  <Icon size={20}>
    <path d="M2 2v12M14 2v12M2 8h12" />
    <path d="M4.5 6 2.3 8l2.2 2M11.5 6l2.2 2-2.2 2" />
  </Icon>
);

/** The chuck of a lathe, its three jaws on the work. */
export const MachiningIcon = () => (
  <Icon size={20}>
    <circle cx="8" cy="8" r="6.3" />
    <circle cx="8" cy="8" r="2.4" />
    <path d="M8 1.7v3.9M13.4 11.2l-3.3-1.9M2.6 11.2l3.3-1.9" />
  </Icon>
);

/** An open ring with a mark of asking: nobody has said. */
export const UnknownIcon = () => (
  <Icon>
    <circle cx="8" cy="8" r="6.2" strokeDasharray="3 2.2" />
    <path d="M6.3 6.4c0-2.2 3.5-2.1 3.5 0 0 1.4-1.8 1.5-1.8 2.8M8 11.2v.2" />
  </Icon>
);
