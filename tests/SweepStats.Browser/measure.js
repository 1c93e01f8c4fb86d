var told = element => element.tagName.toLowerCase() + (element.className && element.className.baseVal === undefined ? '.' + element.className : '')
    + ' "' + element.textContent.trim().slice(0, 60) + '"';

var scrolls = element => {
    for (let at = element.parentElement; at && at !== document.body; at = at.parentElement) {
        if (['auto', 'scroll', 'hidden'].includes(getComputedStyle(at).overflowX)) {
            return true;
        }
    }
    return false;
};

// A table or picture that scrolls within its own frame does not push the page.
var beyond = document.documentElement.scrollWidth <= document.documentElement.clientWidth ? [] : [...document.querySelectorAll('body *')]
    .filter(element => element.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5 && !scrolls(element))
    .map(told).concat(['page: ' + document.documentElement.scrollWidth + ' px']);

var drawnSize = element => {
    const size = parseFloat(getComputedStyle(element).fontSize);
    const matrix = element.ownerSVGElement && element.getScreenCTM ? element.getScreenCTM() : null;
    return matrix ? size * Math.hypot(matrix.a, matrix.b) : size;
};

var smaller = pixels => [...document.querySelectorAll('body *')]
    .filter(element => [...element.childNodes].some(node => node.nodeType === Node.TEXT_NODE && node.textContent.trim()))
    .filter(element => element.getClientRects().length && getComputedStyle(element).visibility !== 'hidden' && element.tagName !== 'title' && element.tagName !== 'desc')
    .filter(element => drawnSize(element) < pixels - 0.01)
    .map(element => told(element) + ' ' + drawnSize(element).toFixed(1) + ' px');
