/**
 * What people open first. A page's code is loaded when it is first asked for, and thirty people who come back to a server
 * that was just started would wait for each page together: the counter took 1.4 s then. Nobody is signed in here, so each
 * of them leads to the sign-in, after most of its code was loaded.
 */
export const firstPages = ['/counter', '/stations/front-desk', '/jobs/-', '/heads/-', '/away', '/customers', '/find']
