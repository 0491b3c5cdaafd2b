import { mount } from 'svelte';
import './styles/tokens.css';
import './styles/base.css';
import './styles/controls.css';
import './styles/parts.css';
import './styles/chart.css';
import './styles/print.css';
import App from './App.svelte';

const target = document.getElementById('app');
if (target) mount(App, { target });
