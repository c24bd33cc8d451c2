/** Every style of the pages but the fonts, in the order they build on each other. */
import './tokens.css';
import './base.css';
import './layout.css';
import './look.css';
import './sub-nav.css';
import './button.css';
import './field.css';
import './table.css';
import './dialog.css';
import './notice.css';
import './pages.css';
import './print.css';
