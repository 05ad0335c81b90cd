import { createRoot } from 'react-dom/client';

const place = document.getElementById('root');
if (place !== null) createRoot(place).render(<h1>Waywright</h1>);
