/** One file for the runner: both read the same answers, and those take most of the time. */
import './form.js';
import './facts.js';
