/** Materials of the example, as its part list calls them. */
export const aluminium = 'EN AC-42100 AlSi7Mg0.3';
export const zincAlloy = 'ZA-12 sand';
export const silverSteel = 'silver steel';
export const steel = 'carbon steel';
export const brass = 'C36000 brass';
